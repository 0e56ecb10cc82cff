import type { BindingReason, PlannedLoad } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { Timetable } from '@/shared/planning/time-in-order'

/**
 * The loads that fix the finish: back from the load that empties last, each load that hands its canner over without a minute between,
 * in order of time. With several canners finishing together the chain of the first canner by id is told.
 */
export function criticalLoads(loads: readonly PlannedLoad[]): PlannedLoad[] {
  const chain: PlannedLoad[] = []
  let next = lastOf(loads)
  while (next) {
    chain.unshift(next)
    const { cannerId, jarBoilAt } = next
    next = loads.find((load) => load.cannerId === cannerId && load.emptyAt === jarBoilAt)
  }
  return chain
}

const lastOf = (loads: readonly PlannedLoad[]): PlannedLoad | undefined =>
  [...loads].sort((a, b) => b.emptyAt - a.emptyAt || a.cannerId.localeCompare(b.cannerId))[0]

/** What fixes the finish: canners that never rest between their first load and the last, or what the chain's first load waited for. */
export function bindingReasonOf(problem: DayProblem, timetable: Timetable, loads: readonly PlannedLoad[]): BindingReason {
  const slackMinutes = problem.window.cannersEmptyBy - timetable.finishAt
  const [head] = criticalLoads(loads)
  if (!head) return { kind: 'first-load', from: problem.window.firstLoadAt, slackMinutes }
  const ready = timetable.context.setUp.places.find((place) => place.canner.id === head.cannerId)?.readyAt ?? head.loadAt
  if (head.jarBoilAt <= ready)
    return { kind: 'canners', method: head.method, cannerIds: busyThroughout(loads, head), from: head.jarBoilAt, slackMinutes }
  return waitedFor(timetable, head, slackMinutes)
}

/** Canners whose own chains end as late as this one's, to the quarter hour. */
function busyThroughout(loads: readonly PlannedLoad[], head: PlannedLoad): string[] {
  const last = lastOf(loads)?.emptyAt ?? 0
  const ids = [...new Set(loads.filter((load) => load.method === head.method).map((load) => load.cannerId))].sort()
  return ids.filter((id) => Math.max(...loads.filter((load) => load.cannerId === id).map((load) => load.emptyAt)) >= last - 15)
}

function waitedFor(timetable: Timetable, head: PlannedLoad, slackMinutes: number): BindingReason {
  const inHead = timetable.jobs
    .flatMap((job) => job.batches)
    .filter(({ batch }) => head.batchParts.some((part) => part.batchId === batch.id))
  const [first] = inHead
  const all = timetable.jobs.flatMap((job) => job.batches)
  const before =
    first && all.find((other) => other.kettle.id === first.kettle.id && other.fillEnd + other.kettle.washMinutes === first.cookStart)
  if (first && before) return { kind: 'kettle', kettleIds: [first.kettle.id], from: before.cookStart, slackMinutes }
  const sameBurner = first && all.some((other) => other.burner.id === first.burner.id && other.fillEnd === first.cookStart)
  if (first && sameBurner) return { kind: 'burners', from: first.cookStart, slackMinutes }
  const preparation = timetable.jobs.find((job) => first && job.batches.includes(first))?.preparation
  return { kind: 'people', skill: preparation?.cook.skills[0] ?? '', from: first?.cookStart ?? head.loadAt, slackMinutes }
}
