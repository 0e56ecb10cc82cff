import type { BindingReason, NextLimit, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { burnerServes, kettleHeat } from '@/shared/planning/kitchen-set-up'
import type { Timetable } from '@/shared/planning/time-in-order'
import { kettlesFor } from '@/shared/planning/split-demand'
import { hoursOf } from '@/shared/planning/staffing-demands'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Something that work queues for: how much of it there is, and how many minutes of work ask for it. */
type Queue = { readonly kind: NextLimit['kind']; readonly skill?: string; readonly work: number; readonly places: number }

/**
 * What would fix the finish next if the binding limit were lifted: of burners, kettles, fill tables and trained hands the one whose work alone
 * could end latest. The slack is how much sooner the day could end before it binds.
 *
 * Each is reckoned as if it worked without a pause from the end of the first briefing, and the shortest load followed. So the slack is never told
 * too short.
 *
 * @returns null when nothing of that kind is used
 */
export function nextLimitOf(
  problem: DayProblem,
  timetable: Timetable,
  tasks: readonly PlannedTask[],
  binding: BindingReason,
): NextLimit | null {
  const loads = timetable.jobs.flatMap((job) => job.loads)
  if (loads.length === 0) return null
  const tail = Math.min(...loads.map((load) => load.emptyAt - load.loadAt))
  const head = problem.window.peopleArriveAt + problem.window.briefingMinutes
  const ends = queuesOf(problem, timetable, tasks)
    .filter(({ kind, places, work }) => kind !== kindOf(binding) && places > 0 && work > 0)
    .map((queue) => ({ queue, end: head + Math.ceil(queue.work / queue.places) + tail }))
  const latest = ends.reduce<(typeof ends)[number] | null>((best, entry) => (best && best.end >= entry.end ? best : entry), null)
  if (!latest) return null
  const slackMinutes = Math.max(0, timetable.finishAt - latest.end)
  const { kind, skill = '' } = latest.queue
  return kind === 'people' ? { kind, skill, slackMinutes } : { kind, slackMinutes }
}

const kindOf = ({ kind }: BindingReason): string => (kind === 'kettle' ? 'kettles' : kind)

function queuesOf(problem: DayProblem, { context, jobs }: Timetable, tasks: readonly PlannedTask[]): Queue[] {
  const preparations = [...new Set(jobs.map((job) => job.preparation))]
  const batches = jobs.flatMap((job) => job.batches)
  const hot = batches.reduce((sum, batch) => sum + batch.fillEnd - batch.cookStart, 0)
  const washed = batches.reduce((sum, batch) => sum + batch.kettle.washMinutes, 0)
  const filled = batches.reduce((sum, batch) => sum + batch.fillEnd - batch.fillStart, 0)
  const burners = context.setUp.kettleBurners.filter((burner) => preparations.some((entry) => burnerServes(burner, kettleHeat(entry))))
  const kettles = new Set(preparations.flatMap((entry) => kettlesFor(problem, entry).map(({ id }) => id)))
  return [
    { kind: 'burners', work: hot, places: burners.length },
    { kind: 'kettles', work: hot + washed, places: kettles.size },
    { kind: 'fill-tables', work: filled, places: problem.fillTables },
    ...(['cook', 'fill', 'prep'] as const).map((stage) => handsFor(problem, jobs, tasks, stage)),
  ]
}

function handsFor(problem: DayProblem, jobs: Timetable['jobs'], tasks: readonly PlannedTask[], stage: 'cook' | 'fill' | 'prep'): Queue {
  const preparations = [...new Set(jobs.map((job) => job.preparation))]
  const work = tasks
    .filter((task) => task.kind === (stage as PlanTaskKind))
    .reduce((sum, { start, end, peopleIds }) => sum + (end - start) * peopleIds.length, 0)
  const able = problem.people.filter((person) => preparations.some((entry) => mayDo(person, stage, entry[stage].skills, entry)))
  const { peopleArriveAt, briefingMinutes, cannersEmptyBy } = problem.window
  const head = peopleArriveAt + briefingMinutes
  const whole = Math.max(1, cannersEmptyBy - head)
  const inside = (from: KitchenTime, until: KitchenTime) => Math.max(0, Math.min(until, cannersEmptyBy) - Math.max(from, head))
  const places = able.reduce((sum, person) => sum + inside(hoursOf(problem, person).from, hoursOf(problem, person).until) / whole, 0)
  return { kind: 'people', skill: preparations[0]?.[stage].skills[0] ?? stage, work, places }
}
