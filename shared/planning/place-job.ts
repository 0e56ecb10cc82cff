import { isEquipmentFree, isPersonFree, rewind, takeEquipment, takePerson, type WorkingHours } from '@/shared/planning/day-calendar'
import type { PlanTaskKind } from '@/shared/planning/day-plan'
import type { Minding, PlanPreparation } from '@/shared/planning/day-problem'
import type { CannerPlace } from '@/shared/planning/kitchen-set-up'
import { hasFixedMinute, isLockedThing, lockedPeople, locksOnLoad } from '@/shared/planning/locks'
import { fillEnds, minutesFor, type PlacedBatch, placeBatch } from '@/shared/planning/place-batch'
import { jarsBoilingFor, placeBegun } from '@/shared/planning/place-begun'
import { count, earliestStart, type PlacingContext } from '@/shared/planning/placing-context'
import { mayGoInto, type SplitJob } from '@/shared/planning/split-demand'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** The turning points of one load in its canner. */
export type LoadTimes = {
  readonly loadAt: KitchenTime
  readonly heatAt: KitchenTime
  readonly boilAt: KitchenTime
  readonly processEndAt: KitchenTime
  readonly restEndAt: KitchenTime
  readonly emptyAt: KitchenTime
}

export type PlacedLoad = LoadTimes & {
  readonly place: CannerPlace
  readonly parts: SplitJob['loads'][number]['parts']
  readonly jarBoilAt: KitchenTime
  readonly operatorId: string
  readonly loaderId: string
  readonly unloaderId: string
}

export type PlacedJob = {
  readonly job: SplitJob
  readonly preparation: PlanPreparation
  readonly loads: readonly PlacedLoad[]
  readonly batches: readonly PlacedBatch[]
}

/** Minutes from the first jar in to the last jar out. */
export function cycleMinutes({ cycle, process }: Pick<PlanPreparation, 'cycle' | 'process'>): number {
  const heat = cycle.loadMinutes + cycle.comeUpMinutes + cycle.ventMinutes + cycle.pressuriseMinutes
  return heat + process.minutes + cycle.restMinutes + cycle.waitMinutes + cycle.unloadMinutes
}

/** Minutes of canner that one load takes: its cycle, and the boiling of its empty jars when that is done in the canner. */
export const cannerMinutesOf = (preparation: PlanPreparation): number =>
  cycleMinutes(preparation) + (preparation.jarTreatment === 'boiled-in-canner' ? preparation.jarBoilMinutes : 0)

/** The turning points of a load that is lifted in at `loadAt`. */
export function loadTimes(preparation: PlanPreparation, loadAt: KitchenTime): LoadTimes {
  const { cycle, process } = preparation
  const heatAt = loadAt + cycle.loadMinutes
  const boilAt = heatAt + cycle.comeUpMinutes + cycle.ventMinutes + cycle.pressuriseMinutes
  const processEndAt = boilAt + process.minutes
  const restEndAt = processEndAt + cycle.restMinutes + cycle.waitMinutes
  return { loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt: restEndAt + cycle.unloadMinutes }
}

/**
 * Books a job at the earliest minute at which its canners, kettles, burners, tables and people all fit, or books nothing.
 *
 * @param emptyBy - the last jar must be out by then
 * @param mostIdleMinutes - how long a canner may stand empty before this load; more cannot end in time
 * @returns null when no minute fits
 */
export function placeJob(
  context: PlacingContext,
  job: SplitJob,
  preparation: PlanPreparation,
  emptyBy: KitchenTime,
  mostIdleMinutes: number,
): PlacedJob | null {
  if (mostIdleMinutes < 0) return count(context.blocked, 'canner')
  const places = placesFor(context, job, preparation)
  if (places.length === 0) return null
  const earliest = Math.min(...places.map((entry) => entry.availableAt))
  const soonest = Math.max(...places.map((entry) => entry.availableAt))
  const latest = Math.min(emptyBy - cycleMinutes(preparation), soonest + mostIdleMinutes, preparation.loadBy ?? Number.POSITIVE_INFINITY)
  if (earliest > latest) count(context.blocked, 'canner')
  // A running day is planned anew while somebody waits, and a large day has many loads: what does not fit at one canner or minute is not tried at the next for the same filling.
  const hopeless = context.underWay || context.crowd ? new Set<string>() : null
  for (const at of minutesToTry(context, job, earliest, latest)) {
    for (const chosen of choosePlaces(places, job, preparation, at, latest, mostIdleMinutes)) {
      if (context.effort.left <= 0) return null
      const mark = context.calendar.trail.length
      const placed = tryAt(context, job, preparation, chosen, hopeless)
      if (placed) return placed
      rewind(context.calendar, mark)
    }
  }
  return null
}

/** Every minute from first to last; where minutes are kept, the one that the standing plan has comes before the others. */
function* minutesToTry(context: PlacingContext, job: SplitJob, earliest: KitchenTime, latest: KitchenTime): Generator<KitchenTime> {
  const fixed = locksOnLoad(context.problem, job).flatMap((lock) => lock.at ?? [])
  const kept = context.keepsMinutes ? plannedAt(context, job)?.loadAt : undefined
  if (fixed.length > 0) {
    if (fixed.every((at) => at === fixed[0] && at >= earliest && at <= latest)) yield fixed[0] ?? earliest
    else count(context.blocked, 'lock')
    return
  }
  if (kept !== undefined && kept >= earliest && kept <= latest) yield kept
  for (let at = earliest; at <= latest; at++) if (at !== kept) yield at
}

const plannedAt = ({ underWay }: PlacingContext, job: SplitJob) =>
  job.batches.map((batch) => underWay?.asPlanned.loads.get(batch.id)).find((planned) => planned !== undefined)

type Candidate = { readonly place: CannerPlace; readonly availableAt: KitchenTime }
type Chosen = { readonly place: CannerPlace; readonly loadAt: KitchenTime }

function placesFor(context: PlacingContext, job: SplitJob, preparation: PlanPreparation): Candidate[] {
  const jars = Math.max(...job.loads.map((load) => load.parts.reduce((sum, part) => sum + part.jars.high, 0)))
  const locks = locksOnLoad(context.problem, job)
  const boiling = jarsBoilingFor(context, job)
  const asPlanned = plannedAt(context, job)?.cannerId
  const made = boiling ? 0 : boilAndFillMinutes(preparation)
  return context.setUp.places
    .filter(({ canner }) => mayGoInto(preparation, canner) && (canner.capacity[preparation.jarSize] ?? 0) >= jars)
    .filter(({ canner }) => isLockedThing(locks, canner.id) && (!boiling || boiling.cannerId === canner.id))
    .map((place) => ({ place, availableAt: availableFrom(context, place.canner.id, place.readyAt) + made }))
    .reverse() // of canners free together the last listed takes the load that is placed first, which is the quick one
    .sort((a, b) => a.availableAt - b.availableAt || Number(b.place.canner.id === asPlanned) - Number(a.place.canner.id === asPlanned))
}

/** When the canner's turn comes: after the loads placed so far, without those that a lock or an outage put there ahead of their turn. */
function availableFrom({ calendar, reserved, underWay }: PlacingContext, cannerId: string, readyAt: KitchenTime): KitchenTime {
  const ahead = reserved.get(cannerId) ?? []
  const spans = (calendar.equipment.get(cannerId) ?? []).filter((span) => !ahead.includes(span))
  return spans.reduce((latest, span) => Math.max(latest, span.end), Math.max(readyAt, underWay?.now ?? readyAt))
}

/** The canner's jars are boiled in it and filled before it can be loaded; 0 when they are made ready elsewhere. */
const boilAndFillMinutes = (preparation: PlanPreparation): number =>
  preparation.jarTreatment === 'boiled-in-canner'
    ? preparation.jarBoilMinutes + minutesFor(preparation.fill, 1, preparation.fill.peopleMax)
    : 0

/** The ways to seat the job's loads from minute `at`: one canner for one load, the soonest canners for several. */
function choosePlaces(
  places: readonly Candidate[],
  job: SplitJob,
  preparation: PlanPreparation,
  at: KitchenTime,
  latest: KitchenTime,
  mostIdle: number,
): Chosen[][] {
  if (job.loads.length === 1) {
    return places
      .filter((entry) => entry.availableAt <= at && at - entry.availableAt <= mostIdle)
      .map((entry) => [{ place: entry.place, loadAt: at }])
  }
  const free = places.map((entry) => ({ ...entry }))
  const chosen: Chosen[] = []
  for (let index = 0; index < job.loads.length; index++) {
    const next = free.reduce((best, entry) => (Math.max(at, entry.availableAt) < Math.max(at, best.availableAt) ? entry : best))
    const loadAt = Math.max(at, next.availableAt)
    chosen.push({ place: next.place, loadAt })
    free[free.indexOf(next)] = { ...next, availableAt: loadAt + cannerMinutesOf(preparation) }
  }
  const last = Math.max(...chosen.map((entry) => entry.loadAt))
  return last <= latest && last - at <= preparation.filledToLoadedLimitMinutes ? [chosen] : []
}

function tryAt(
  context: PlacingContext,
  job: SplitJob,
  preparation: PlanPreparation,
  chosen: readonly Chosen[],
  hopeless: Set<string> | null,
): PlacedJob | null {
  const handled = chosen.map((entry) => ({ entry, hands: handsAtCanner(context, job, preparation, entry) }))
  if (handled.some(({ hands }) => hands === null)) return null

  const filledBy = Math.min(...chosen.map((entry) => entry.loadAt))
  const filledFrom = Math.max(...chosen.map((entry) => entry.loadAt)) - preparation.filledToLoadedLimitMinutes
  const batches: PlacedBatch[] = []
  const lastLoadAt = Math.max(...chosen.map((entry) => entry.loadAt))
  const ends = fillEnds(context.fillRules.get(job) ?? context.fillRule, filledFrom, filledBy)
  for (const [index, batch] of job.batches.entries()) {
    const within = index === 0 && hopeless ? { ...context, hopeless } : context
    const begun = context.underWay?.batches.get(batch.id)
    const placed =
      begun && begun.stage !== 'prepared'
        ? placeBegun(within, batch, preparation, begun, ends, filledBy, lastLoadAt)
        : placeBatch(within, batch, preparation, ends)
    if (!placed) return null
    batches.push(placed)
  }
  const loads: PlacedLoad[] = []
  for (const [index, { entry, hands }] of handled.entries()) {
    const parts = job.loads[index]?.parts ?? []
    const jarBoilAt = bookCanner(context, job, preparation, entry, batches, hands?.operatorId ?? '')
    if (jarBoilAt === null || !hands) return null
    loads.push({ ...loadTimes(preparation, entry.loadAt), ...hands, place: entry.place, parts, jarBoilAt })
    rememberOperator(context, entry.place.canner.id, hands.operatorId)
  }
  if (hasFixedMinute(context.problem, job)) reserve(context, loads)
  return { job, preparation, loads, batches }
}

/** What was placed by its lock lies ahead of its turn: other loads may come before it. */
function reserve({ reserved, calendar }: PlacingContext, loads: readonly PlacedLoad[]): void {
  for (const { place } of loads) {
    const id = place.canner.id
    const before = reserved.get(id)
    reserved.set(id, [...(before ?? []), ...(calendar.equipment.get(id) ?? []).slice(-1)])
    calendar.trail.push(() => (before ? reserved.set(id, before) : reserved.delete(id)))
  }
}

function rememberOperator({ lastOperator, calendar }: PlacingContext, cannerId: string, operatorId: string): void {
  const before = lastOperator.get(cannerId)
  lastOperator.set(cannerId, operatorId)
  calendar.trail.push(() => (before === undefined ? lastOperator.delete(cannerId) : lastOperator.set(cannerId, before)))
}

/** Takes the canner, from the boiling of its empty jars where the treatment asks for it. */
function bookCanner(
  context: PlacingContext,
  job: SplitJob,
  preparation: PlanPreparation,
  { place, loadAt }: Chosen,
  batches: readonly PlacedBatch[],
  operatorId: string,
): KitchenTime | null {
  const { calendar } = context
  const boiled = preparation.jarTreatment === 'boiled-in-canner'
  const boilBy = Math.min(...batches.map((batch) => batch.fillStart)) - preparation.jarBoilMinutes
  const begun = boiled ? jarsBoilingFor(context, job) : null
  const jarBoilAt = begun ? begun.from : boiled ? boilBy : loadAt
  const { emptyAt } = loadTimes(preparation, loadAt)
  const soonest = Math.max(earliestStart(context), context.underWay?.hotAt.get(place.canner.id) ?? Number.NEGATIVE_INFINITY)
  if (begun ? begun.from > boilBy : jarBoilAt < soonest) return count(context.blocked, 'canner')
  if (!begun && jarBoilAt < place.readyAt && boiled && place.readyAt > context.problem.window.firstLoadAt)
    return count(context.blocked, 'canner')
  if (!isEquipmentFree(calendar, place.canner.id, jarBoilAt, emptyAt)) return count(context.blocked, 'canner')
  if (boiled) {
    const minding = mindingOf(context, preparation)
    const operator = context.setUp.hours.find((hours) => hours.person.id === operatorId)
    if (!minding || !operator || !isPersonFree(calendar, operator, 'canner-watch', jarBoilAt, loadAt, minding))
      return count(context.blocked, 'operator')
    takePerson(calendar, operatorId, 'canner-watch', jarBoilAt, loadAt, minding)
  }
  takeEquipment(calendar, place.canner.id, jarBoilAt, emptyAt)
  return jarBoilAt
}

const mindingOf = (context: PlacingContext, preparation: PlanPreparation): Minding | undefined =>
  context.problem.minding.find((entry) => entry.method === preparation.method)

type HandsAtCanner = { readonly operatorId: string; readonly loaderId: string; readonly unloaderId: string }

function handsAtCanner(
  context: PlacingContext,
  job: SplitJob,
  preparation: PlanPreparation,
  { place, loadAt }: Chosen,
): HandsAtCanner | null {
  const { calendar } = context
  const minding = mindingOf(context, preparation)
  if (!minding) return count(context.blocked, 'operator')
  const times = loadTimes(preparation, loadAt)
  const mark = calendar.trail.length
  const planned = plannedAt(context, job)
  const locked = lockedPeople(locksOnLoad(context.problem, job))
  for (const operator of operatorsInOrder(context, preparation, minding, place, times, planned?.operatorId)) {
    if (locked.length > 0 && !(locked.length === 1 && locked[0] === operator.person.id)) {
      count(context.blocked, 'lock')
      continue
    }
    takePerson(calendar, operator.person.id, 'canner-watch', loadAt, times.emptyAt, minding)
    const loader = lifter(context, preparation, 'load', operator, loadAt, times.heatAt, planned?.loaderId)
    const unloader = loader && lifter(context, preparation, 'unload', operator, times.restEndAt, times.emptyAt, planned?.unloaderId)
    if (loader && unloader) return { operatorId: operator.person.id, loaderId: loader, unloaderId: unloader }
    rewind(calendar, mark)
    count(context.blocked, 'lifter')
  }
  return count(context.blocked, 'operator')
}

function operatorsInOrder(
  context: PlacingContext,
  preparation: PlanPreparation,
  minding: Minding,
  place: CannerPlace,
  times: LoadTimes,
  asPlanned: string | undefined,
): WorkingHours[] {
  const { calendar, setUp, operatorRule, lastOperator } = context
  const free = setUp.hours.filter(
    (hours) =>
      mayDo(hours.person, 'process', [minding.skill], preparation) &&
      isPersonFree(calendar, hours, 'canner-watch', times.loadAt, times.emptyAt, minding),
  )
  const others = new Set([...lastOperator].filter(([canner]) => canner !== place.canner.id).map(([, operator]) => operator))
  const cost = ({ person }: WorkingHours) => {
    if (person.id === asPlanned) return -1
    if (lastOperator.get(place.canner.id) === person.id) return operatorRule === 'keep-a-canner' ? 0 : 1
    return others.has(person.id) === (operatorRule === 'one-minds-all') ? 0 : 2
  }
  return free
    .map((hours, index) => ({ hours, index, cost: cost(hours) }))
    .sort((a, b) => a.cost - b.cost || a.index - b.index)
    .map(({ hours }) => hours)
}

/** Whoever lifts the jars in the plan that stands, else the operator when free, else somebody else who may. */
function lifter(
  context: PlacingContext,
  preparation: PlanPreparation,
  kind: PlanTaskKind,
  operator: WorkingHours,
  start: KitchenTime,
  end: KitchenTime,
  asPlanned: string | undefined,
): string | null {
  const { calendar, setUp } = context
  const fits = (hours: WorkingHours) =>
    mayDo(hours.person, kind, [], preparation) && isPersonFree(calendar, hours, 'canner-hands', start, end)
  const planned = asPlanned === undefined ? undefined : setUp.hours.find((hours) => hours.person.id === asPlanned)
  const lifting = planned && fits(planned) ? planned : fits(operator) ? operator : setUp.hours.find(fits)
  if (!lifting) return null
  takePerson(calendar, lifting.person.id, 'canner-hands', start, end)
  return lifting.person.id
}
