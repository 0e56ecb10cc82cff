import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import type { Replan } from '@/shared/planning/replan-day'
import type { Say } from './check-day-people'
import { checkDayPlan, type Violation } from './check-day-plan'

/**
 * Checks a plan that was made anew while the day runs, from the rules alone: what has begun has not moved, nothing starts in the past, a
 * process that was interrupted is whole again, no wait is longer than it may be, and no jar is lost without a word.
 *
 * @param asked - what the day was planned for, before any setback
 */
export function checkReplan(asked: DayProblem, before: DayPlan, soFar: DaySoFar, replan: Replan): Violation[] {
  const found: Violation[] = []
  const say: Say = (rule, detail) => void found.push({ rule, detail })
  const begun = begunIds(before, soFar, replan)
  found.push(...checkDayPlan(replan.problem, replan.plan, { ids: begun, now: soFar.now }).filter((each) => !isExcused(each, soFar, replan)))
  checkLoads(asked, soFar, replan, say)
  checkBatches(before, soFar, replan, say)
  checkTasks(before, soFar, replan, begun, say)
  checkSetbacks(soFar, replan, begun, say)
  checkJars(soFar, replan, say)
  checkNames(before, soFar, replan, say)
  return found
}

/**
 * What no new plan can undo and what the answer says itself: briefings and crowds were arranged before somebody came late or left, nobody
 * trained is there to take a load over, a load in a canner comes out after closing time.
 */
function isExcused({ rule, detail }: Violation, { setbacks, loads, now }: DaySoFar, { handOvers, plan, problem }: Replan): boolean {
  const inCanner = plan.loads.filter(({ id }) => loads.some((fact) => fact.loadId === id))
  if (rule === 'hard-end') return detail.startsWith('clean-up') && inCanner.some(({ emptyAt }) => emptyAt > problem.window.cannersEmptyBy)
  if (rule === 'operator-hours') return handOvers.some(({ to, loadId }) => to === null && detail.endsWith(`${loadId}`))
  // Rest is arranged around what has begun; who came late or left has other hours than the rest was planned for.
  if (rule === 'stretch' || rule === 'break') {
    const person = problem.people.find(({ name }) => detail.startsWith(`${name} `))
    const isMoved = setbacks.some((each) => 'personId' in each && (person === undefined || each.personId === person.id))
    const middle = person ? (person.from + person.until) / 2 : Number.NEGATIVE_INFINITY
    return rule === 'stretch' || isMoved || now > middle
  }
  return (rule === 'briefing' || rule === 'headcount') && setbacks.length > 0
}

function begunIds(before: DayPlan, soFar: DaySoFar, { plan }: Replan): Set<string> {
  const loads = soFar.loads.filter(({ state }) => state !== 'planned').map(({ loadId }) => loadId)
  const batches = soFar.batches.filter(({ state }) => state === 'cooking' || state === 'filled').map(({ batchId }) => batchId)
  const ids = new Set([...loads, ...batches])
  const old = new Set(before.tasks.filter(({ start }) => start < soFar.now).map(({ id }) => id))
  for (const task of plan.tasks) {
    if (task.loadId !== null && loads.includes(task.loadId)) ids.add(task.id)
    if (task.start < soFar.now && (old.has(task.id) || task.id.endsWith('/before'))) ids.add(task.id)
    if (task.kind === 'cook' && task.batchId !== null && batches.includes(task.batchId)) ids.add(task.id)
  }
  return ids
}

function checkLoads(asked: DayProblem, soFar: DaySoFar, { plan }: Replan, say: Say): void {
  for (const fact of soFar.loads.filter(({ state }) => state === 'in-canner' || state === 'done')) {
    const load = plan.loads.find(({ id }) => id === fact.loadId)
    const process = asked.preparations.find(({ id }) => id === load?.preparationId)?.process
    if (!load || !process) {
      say('frozen', `${fact.loadId} is no longer in the plan`)
      continue
    }
    if (load.loadAt !== fact.loadedAt || load.cannerId !== fact.cannerId) say('frozen', `${load.id} was loaded elsewhere`)
    if (fact.operatorId && load.operatorId !== fact.operatorId) say('frozen', `${load.id} is minded by somebody else`)
    if (fact.boilAt !== null && load.boilAt !== fact.boilAt) say('frozen', `${load.id} boiled at another minute`)
    if (fact.emptyAt !== null && load.emptyAt !== fact.emptyAt) say('frozen', `${load.id} came out at another minute`)
    if (fact.boilAt === null && load.boilAt < soFar.now) say('restart', `${load.id} is said to have boiled already`)
    const minutes = Math.max(fact.processMinutes ?? process.minutes, process.publishedMinutes)
    if (load.processEndAt - load.boilAt < minutes) say('restart', `${load.id} has ${load.processEndAt - load.boilAt} of ${minutes} min`)
    if (fact.processEndAt === null && load.processEndAt < soFar.now) say('restart', `${load.id} is said to be over`)
  }
  for (const load of plan.loads) {
    const isToCome = !soFar.loads.some((fact) => fact.loadId === load.id && fact.state !== 'planned')
    const preparation = asked.preparations.find(({ id }) => id === load.preparationId)
    if (!isToCome || !preparation) continue
    if (load.loadAt < soFar.now) say('past', `${load.id} is to be loaded in the past`)
    for (const part of load.batchParts) {
      const fact = soFar.batches.find(({ batchId }) => batchId === part.batchId)
      const batch = plan.batches.find(({ id }) => id === part.batchId)
      const since = fact?.waiting?.since ?? batch?.fillEnd ?? Number.NaN
      const loadBy = fact?.waiting?.loadBy ?? since + preparation.filledToLoadedLimitMinutes
      if (!(load.loadAt <= loadBy)) say('filled-to-loaded', `${part.batchId} waits until ${load.loadAt}, ${loadBy} at the latest`)
      if (batch && load.loadAt < batch.fillEnd) say('order', `${load.id} before ${batch.id} is filled`)
    }
  }
}

function checkBatches(before: DayPlan, soFar: DaySoFar, { plan, handOvers, brokenWaits }: Replan, say: Say): void {
  for (const fact of soFar.batches) {
    if (fact.state !== 'cooking' && fact.state !== 'filled') continue
    const batch = plan.batches.find(({ id }) => id === fact.batchId)
    if (!batch) {
      say('frozen', `${fact.batchId} is no longer in the plan`)
      continue
    }
    if (batch.cookStart !== fact.startedAt) say('frozen', `${batch.id} was started at another minute`)
    if (fact.kettleId !== null && batch.kettleId !== fact.kettleId) say('frozen', `${batch.id} is in another kettle`)
    if (fact.filledAt !== null && batch.fillEnd !== fact.filledAt) say('frozen', `${batch.id} was filled at another minute`)
    if (fact.jarsFilled !== null && batch.jars.typical !== fact.jarsFilled) say('frozen', `${batch.id} gave another number of jars`)
    const was = before.tasks.find(({ id }) => id === `cook/${batch.id}`)?.peopleIds ?? []
    const is = plan.tasks.find(({ id }) => id === `cook/${batch.id}`)?.peopleIds ?? []
    const handed = handOvers.some(({ batchId }) => batchId === batch.id)
    if (!handed && was.join() !== is.join()) say('frozen', `${batch.id} is cooked by somebody else`)
    if (
      fact.state === 'cooking' &&
      fact.fillStartedAt === null &&
      !brokenWaits.some(({ batchId }) => batchId === batch.id) &&
      batch.fillStart < soFar.now
    )
      say('past', `${batch.id} is to be filled in the past`)
  }
}

function checkTasks(before: DayPlan, soFar: DaySoFar, { plan, problem, dropped }: Replan, begun: ReadonlySet<string>, say: Say): void {
  const isLate = (task: { preparationId: string | undefined; start: number }) =>
    soFar.setbacks.some((each) => each.kind === 'produce-late' && each.preparationId === task.preparationId && each.at > task.start)
  for (const task of plan.tasks)
    if (task.start < soFar.now && !begun.has(task.id) && !startsWithBegun(task, begun)) say('past', `${task.id} starts in the past`)
  for (const old of before.tasks.filter(
    ({ kind, start }) => start < soFar.now && (kind === 'prep' || kind === 'wash' || kind === 'label'),
  )) {
    const batch = before.batches.find(({ id }) => id === old.batchId)
    if (dropped.some(({ id }) => id === old.batchId) || isLate({ preparationId: batch?.preparationId, start: old.start })) continue
    const stay = old.peopleIds.filter((id) =>
      problem.people.some((person) => person.id === id && person.until >= old.end && person.from <= old.start),
    )
    if (stay.length === 0) continue
    const is = plan.tasks.find(({ id, start }) => (id === old.id || id === `${old.id}/before`) && start === old.start)
    // Jars washed long ago are cold: that washing is over and done, and is done again.
    const isCold = old.kind === 'wash' && old.end + 30 < soFar.now
    if (!is && !isCold) say('frozen', `${old.id} has moved`)
    if (is && is.end > soFar.now && !stay.every((id) => is.peopleIds.includes(id))) say('frozen', `${old.id} has other people`)
  }
}

/** Steps of work that has begun, such as holding what is in the kettle. */
const startsWithBegun = ({ batchId, loadId, kind }: DayPlan['tasks'][number], begun: ReadonlySet<string>) =>
  (loadId !== null && begun.has(loadId)) || (batchId !== null && begun.has(batchId) && kind !== 'label')

function checkSetbacks(soFar: DaySoFar, { plan, problem }: Replan, begun: ReadonlySet<string>, say: Say): void {
  const toCome = plan.tasks.filter(({ id }) => !begun.has(id))
  for (const each of soFar.setbacks) {
    if (each.kind === 'canner-out') {
      const heat = problem.canners.find(({ id }) => id === each.cannerId)?.preheatMinutes ?? 0
      const end = each.until === null ? Number.POSITIVE_INFINITY : each.until + heat
      for (const load of plan.loads)
        if (!begun.has(load.id) && load.cannerId === each.cannerId && load.jarBoilAt < end && load.emptyAt > each.from)
          say('outage', `${load.id} in ${each.cannerId} while it is out`)
    }
    if (each.kind === 'person-away')
      for (const task of toCome)
        if (task.peopleIds.includes(each.personId) && task.end > each.from) say('away', `${task.id} with somebody who left`)
    if (each.kind === 'person-late')
      for (const task of toCome)
        if (task.peopleIds.includes(each.personId) && task.start < each.at) say('away', `${task.id} with somebody not yet there`)
    if (each.kind === 'produce-late') {
      const own = plan.batches.filter((batch) => batch.preparationId === each.preparationId).map(({ id }) => id)
      for (const task of toCome)
        if (task.kind === 'prep' && own.includes(task.batchId ?? '') && task.start < each.at)
          say('produce', `${task.id} before its produce`)
    }
    if (each.kind === 'produce-short') {
      const own = plan.batches.filter((batch) => batch.preparationId === each.preparationId)
      const done = own.filter(({ id }) => begun.has(id)).length
      if (own.length > Math.max(each.batches, done)) say('produce', `${own.length} batches with produce for ${each.batches}`)
    }
  }
}

/** Jars that wait go into a load to come, or are named as jars that cannot. */
function checkJars(soFar: DaySoFar, { plan, brokenWaits }: Replan, say: Say): void {
  for (const { batchId, waiting } of soFar.batches) {
    if (!waiting) continue
    const toCome = plan.loads.filter(({ id }) => !soFar.loads.some((fact) => fact.loadId === id && fact.state !== 'planned'))
    const planned = toCome.flatMap((load) => load.batchParts).filter((part) => part.batchId === batchId)
    const jars = planned.reduce((sum, part) => sum + part.jars.typical, 0)
    const told = brokenWaits.filter((each) => each.batchId === batchId).reduce((sum, each) => sum + each.jars, 0)
    if (jars + told !== waiting.jars) say('jars-conserved', `${batchId}: ${waiting.jars} wait, ${jars} planned, ${told} told`)
  }
  for (const batch of plan.batches) {
    const told = brokenWaits.some(({ batchId }) => batchId === batch.id)
    const isLoaded = plan.loads.some((load) => load.batchParts.some((part) => part.batchId === batch.id))
    const fact = soFar.batches.find(({ batchId }) => batchId === batch.id)
    if (!told && !isLoaded && fact?.state !== 'filled') say('jars-conserved', `${batch.id} goes into no canner`)
  }
}

function checkNames(before: DayPlan, soFar: DaySoFar, { plan, dropped }: Replan, say: Say): void {
  for (const batch of plan.batches) {
    const old = before.batches.find(({ id }) => id === batch.id)
    if (old?.code !== batch.code) say('code', `${batch.id} is called ${batch.code}, was ${old?.code}`)
  }
  for (const old of before.batches) {
    const isKept = plan.batches.some(({ id }) => id === old.id)
    if (!isKept && !dropped.some(({ id }) => id === old.id)) say('dropped', `${old.code} is gone without a word`)
  }
  for (const old of before.loads) {
    const fact = soFar.loads.find(({ loadId }) => loadId === old.id)
    const load = plan.loads.find(({ id }) => id === old.id)
    if (!load && fact?.state !== 'failed' && !dropped.some(({ id }) => id === old.id)) say('dropped', `${old.code} is gone without a word`)
    if (load && !fact && load.batchParts[0]?.batchId !== old.batchParts[0]?.batchId) say('code', `${old.code} is another load now`)
  }
  if (new Set(plan.loads.map(({ code }) => code)).size !== plan.loads.length) say('code', 'two loads of one code')
}
