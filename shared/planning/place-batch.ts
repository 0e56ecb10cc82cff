import { isEquipmentFree, type Occupation, rewind, takeEquipment, type WorkingHours } from '@/shared/planning/day-calendar'
import type { BurnerUse, KettleWork, PlanBurner, PlanKettle, StageWork } from '@/shared/planning/day-problem'
import { burnerServes, kettleHeat } from '@/shared/planning/kitchen-set-up'
import { isLockedThing, locksOn, startsAsLocked } from '@/shared/planning/locks'
import { ablePeople, enoughFree, pickTeam } from '@/shared/planning/pick-team'
import { count, earliestStart, type FillRule, type PlacingContext } from '@/shared/planning/placing-context'
import { kettlesFor, type SplitBatch } from '@/shared/planning/split-demand'
import { isTableReady, tableHolds } from '@/shared/planning/table-wash'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Washed jars are filled within this many minutes, while they are still hot (common practice). */
export const WASHED_JARS_STAY_HOT_MINUTES = 30

/** Work with its people. */
export type Booked = { readonly start: KitchenTime; readonly end: KitchenTime; readonly peopleIds: readonly string[] }

export type PlacedBatch = {
  readonly batch: SplitBatch
  readonly kettle: PlanKettle
  readonly burner: PlanBurner
  readonly cookStart: KitchenTime
  readonly cookEnd: KitchenTime
  readonly fillStart: KitchenTime
  readonly fillEnd: KitchenTime
  readonly tableIndex: number
  readonly prep: Booked
  readonly cook: Booked
  readonly fill: Booked
  readonly wash: Booked
  /** Pot and burner that boil the empty jars; null when they are washed hot or boiled in the canner. */
  readonly jarPot: { readonly kettle: PlanKettle; readonly burner: PlanBurner; readonly start: KitchenTime } | null
}

/**
 * Books one kettle batch so that it is filled at the first of these minutes that fits, or books nothing that is kept.
 *
 * Teams are as small as the time allows. Works backwards from the canner: fill, cook, wash, prep.
 */
export function placeBatch(
  context: PlacingContext,
  batch: SplitBatch,
  preparation: KettleWork,
  ends: readonly KitchenTime[],
): PlacedBatch | null {
  const mark = context.calendar.trail.length
  for (const [fillEnd, team] of fillingsToTry(context, batch, preparation, ends)) {
    if (context.effort.left <= 0) return null
    const placed = fillAndCook(context, batch, preparation, fillEnd, team)
    if (placed) return placed
    rewind(context.calendar, mark)
    context.hopeless?.add(`${fillEnd} ${team}`)
  }
  return null
}

/** Each minute with the smallest team first; where minutes are kept, the filling of the plan that stands comes before all. */
export function* fillingsToTry(
  { underWay, keepsMinutes, hopeless }: PlacingContext,
  { id }: SplitBatch,
  { fill }: KettleWork,
  ends: readonly KitchenTime[],
): Generator<readonly [fillEnd: KitchenTime, team: number]> {
  const planned = keepsMinutes ? underWay?.asPlanned.slots.get(`fill/${id}`) : undefined
  if (planned && ends.includes(planned.end)) yield [planned.end, planned.peopleIds.length]
  for (const fillEnd of ends)
    for (let team = fill.peopleMin; team <= fill.peopleMax; team++) if (!hopeless?.has(`${fillEnd} ${team}`)) yield [fillEnd, team]
}

/** Every minute of [from, to], the preferred first. */
export function fillEnds(rule: FillRule, from: KitchenTime, to: KitchenTime): KitchenTime[] {
  const minutes = Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => to - index)
  if (rule === 'just-in-time') return minutes
  if (rule === 'ahead') return minutes.reverse()
  const middle = (from + to) / 2
  return minutes.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || b - a)
}

function fillAndCook(
  context: PlacingContext,
  batch: SplitBatch,
  preparation: KettleWork,
  fillEnd: KitchenTime,
  team: number,
): PlacedBatch | null {
  context.effort.left--
  const fillStart = fillEnd - minutesFor(preparation.fill, batch.multiple, team)
  const filling = takeTableAndFillers(context, batch, preparation, fillStart, fillEnd, team)
  if (!filling) return null

  const mark = context.calendar.trail.length
  const earliest = fillStart - preparation.cookedToFillingLimitMinutes
  const planned = context.keepsMinutes ? (context.underWay?.asPlanned.slots.get(`cook/${batch.id}`)?.end ?? fillStart) : fillStart
  for (let cookEnd = planned >= earliest && planned <= fillStart ? planned : fillStart; cookEnd >= earliest; cookEnd--) {
    const kettle = cookAndPrepare(context, batch, preparation, cookEnd, fillStart, fillEnd)
    if (kettle) return { batch, ...kettle, ...filling, fillStart, fillEnd }
    rewind(context.calendar, mark)
  }
  return null
}

/** Books a table and a team for a filling; null when there is none. */
export function takeTableAndFillers(
  context: PlacingContext,
  { id }: SplitBatch,
  preparation: KettleWork,
  start: KitchenTime,
  end: KitchenTime,
  team: number,
): Pick<PlacedBatch, 'tableIndex' | 'fill'> | null {
  if (!startsAsLocked(locksOn(context.problem, id, 'fill'), start)) return count(context.blocked, 'lock')
  const tableIndex = freeTable(context, preparation, start, end)
  if (tableIndex < 0) return count(context.blocked, 'table')
  const peopleIds = pickTeam(context, 'fill', preparation.fill, preparation, 'hands', start, end, team, id)
  if (!peopleIds) return count(context.blocked, 'fill')
  for (const held of tableHolds(context.problem, preparation, tableIndex, start, end))
    takeEquipment(context.calendar, held.id, held.start, held.end)
  return { tableIndex, fill: { start, end, peopleIds } }
}

type CookedBatch = Pick<PlacedBatch, 'kettle' | 'burner' | 'cookStart' | 'cookEnd' | 'cook' | 'wash' | 'prep' | 'jarPot'>

function cookAndPrepare(
  context: PlacingContext,
  batch: SplitBatch,
  preparation: KettleWork,
  cookEnd: KitchenTime,
  fillStart: KitchenTime,
  fillEnd: KitchenTime,
): CookedBatch | null {
  const cookStart = cookEnd - preparation.kettleMinutes
  if (cookStart < earliestStart(context)) return count(context.blocked, 'kettle')
  if (!startsAsLocked(locksOn(context.problem, batch.id, 'cook'), cookStart)) return count(context.blocked, 'lock')
  const { peopleMin } = preparation.cook
  const cooks = pickTeam(
    context,
    'cook',
    preparation.cook,
    preparation,
    cookOccupation(preparation),
    cookStart,
    fillStart,
    peopleMin,
    batch.id,
  )
  if (!cooks) return count(context.blocked, 'cook')
  const pot = takePot(context, batch, preparation, cookStart, fillEnd)
  if (!pot) return null
  const jarPot = takeJarPot(context, preparation, fillStart, fillEnd)
  if (jarPot === 'none') return count(context.blocked, 'burner')
  const wash = washJars(context, batch, preparation, jarPot ? jarPot.start : fillStart)
  if (!wash) return count(context.blocked, 'wash')
  const prep = prepare(context, batch, preparation, preparation.prepBefore === 'cook' ? cookStart : fillStart)
  if (!prep) return count(context.blocked, 'prep')
  return { ...pot, cookStart, cookEnd, cook: { start: cookStart, end: fillStart, peopleIds: cooks }, wash, prep, jarPot }
}

/** What a cook is occupied with. */
export const cookOccupation = (preparation: KettleWork): Occupation => (preparation.cook.attention === 'watch' ? 'kettle-watch' : 'hands')

/** Washes the jars of a batch so that they are hot at `doneBy`, or keeps the washing that has begun where they still will be. */
export function washJars(context: PlacingContext, batch: SplitBatch, preparation: KettleWork, doneBy: KitchenTime): Booked | null {
  const begun = context.underWay?.batches.get(batch.id)
  const washed = begun && begun.stage !== 'filled' ? begun.wash : null
  const notBefore = doneBy - WASHED_JARS_STAY_HOT_MINUTES
  if (washed && washed.end <= doneBy && washed.end >= notBefore) return washed
  return bookEarlier(context, 'wash', preparation.wash, preparation, batch, doneBy, notBefore)
}

/** Prepares the produce of a batch by `doneBy`, or keeps the preparing that has begun where it is over by then. */
export function prepare(context: PlacingContext, batch: SplitBatch, preparation: KettleWork, doneBy: KitchenTime): Booked | null {
  const begun = context.underWay?.batches.get(batch.id)
  if (begun && begun.stage !== 'filled' && begun.prep) return begun.prep.end <= doneBy ? begun.prep : null
  const here = Math.max(context.problem.window.peopleArriveAt, context.underWay?.produceAt.get(preparation.id) ?? 0)
  return bookEarlier(context, 'prep', preparation.prep, preparation, batch, doneBy, here)
}

/** Minutes a team needs for one kettle batch, rounded up; 0 when the stage has no work. */
export const minutesFor = (work: StageWork, multiple: number, team: number): number =>
  Math.ceil((work.workMinutes * multiple) / Math.max(1, team) - 1e-9)

function freeTable(context: PlacingContext, preparation: KettleWork, start: KitchenTime, end: KitchenTime): number {
  for (let index = 0; index < context.problem.fillTables; index++) {
    if (isTableReady(context.calendar, context.problem, preparation, index, start, end)) return index
  }
  return -1
}

function takePot(context: PlacingContext, batch: SplitBatch, preparation: KettleWork, start: KitchenTime, end: KitchenTime) {
  const { calendar, problem, setUp } = context
  const litres = preparation.batchLitres * batch.multiple
  const locks = locksOn(problem, batch.id, 'cook')
  const free = kettlesFor(problem, preparation).filter(
    (entry) =>
      entry.litres >= litres && isLockedThing(locks, entry.id) && isEquipmentFree(calendar, entry.id, start, end + entry.washMinutes),
  )
  const asPlanned = context.underWay?.asPlanned.kettles.get(batch.id)
  const kettle =
    free.find((entry) => entry.id === asPlanned) ??
    free.reduce<PlanKettle | null>((best, entry) => (best && best.litres <= entry.litres ? best : entry), null)
  if (!kettle) return count(context.blocked, 'kettle')
  const burner = takeBurner(
    context,
    setUp.kettleBurners,
    kettleHeat(preparation),
    start,
    end,
    context.underWay?.asPlanned.burners.get(batch.id),
  )
  if (!burner) return count(context.blocked, 'burner')
  takeEquipment(calendar, kettle.id, start, end + kettle.washMinutes)
  return { kettle, burner }
}

/** The burner of the plan that stands, else the most specialised free one first, so that rings which serve everything stay free. */
function takeBurner(
  context: PlacingContext,
  burners: readonly PlanBurner[],
  use: BurnerUse,
  start: KitchenTime,
  end: KitchenTime,
  asPlanned?: string,
) {
  const { calendar } = context
  const free = burners.filter((burner) => burnerServes(burner, use) && isEquipmentFree(calendar, burner.id, start, end))
  const burner = free
    .filter((entry) => circuitCarries(context, entry, start, end))
    .sort((a, b) => Number(b.id === asPlanned) - Number(a.id === asPlanned) || usesOf(a) - usesOf(b))[0]
  if (burner) takeEquipment(calendar, burner.id, start, end)
  return burner ?? null
}

const usesOf = (burner: PlanBurner) => burner.forUses?.length ?? 4

function circuitCarries(context: PlacingContext, burner: PlanBurner, start: KitchenTime, end: KitchenTime): boolean {
  const circuit = context.problem.circuits.find((entry) => entry.id === burner.circuit)
  if (!circuit) return true
  const others = context.problem.burners.filter((other) => other.id !== burner.id && other.circuit === burner.circuit)
  const onAllDay = new Set(context.setUp.places.map((place) => place.burner.id))
  const busy = others.filter((other) => onAllDay.has(other.id) || !isEquipmentFree(context.calendar, other.id, start, end))
  return busy.reduce((sum, other) => sum + (other.watts ?? 0), burner.watts ?? 0) <= circuit.watts
}

function takeJarPot(
  context: PlacingContext,
  preparation: KettleWork,
  fillStart: KitchenTime,
  fillEnd: KitchenTime,
): PlacedBatch['jarPot'] | 'none' {
  if (preparation.jarTreatment !== 'boiled-in-pot') return null
  const start = fillStart - preparation.jarBoilMinutes
  if (start < earliestStart(context)) return 'none'
  const kettle = context.problem.kettles.find(
    (entry) => entry.use === 'jars' && isEquipmentFree(context.calendar, entry.id, start, fillEnd),
  )
  const burner = kettle && takeBurner(context, context.setUp.kettleBurners, 'jars', start, fillEnd)
  if (!kettle || !burner) return 'none'
  takeEquipment(context.calendar, kettle.id, start, fillEnd)
  return { kettle, burner, start }
}

/** Books work that may be done ahead: where the plan that stands has it, else as late as fits before `doneBy`, with as few people as fit. */
function bookEarlier(
  context: PlacingContext,
  kind: 'prep' | 'wash',
  work: StageWork,
  preparation: KettleWork,
  { id, multiple }: SplitBatch,
  doneBy: KitchenTime,
  notBefore: KitchenTime,
): Booked | null {
  if (work.workMinutes === 0) return { start: doneBy, end: doneBy, peopleIds: [] }
  const able = ablePeople(context, kind, work, preparation)
  const from = Math.max(notBefore, earliestStart(context))
  const locks = locksOn(context.problem, id, kind)
  const asPlanned = context.underWay?.asPlanned.slots.get(`${kind}/${id}`)
  const at = (start: KitchenTime, end: KitchenTime, team: number): Booked | null => {
    if (start < from || end > doneBy || !startsAsLocked(locks, start) || !enoughFree(context, able, start, end, team)) return null
    const peopleIds = pickTeam(context, kind, work, preparation, 'hands', start, end, team, id)
    return peopleIds && { start, end, peopleIds }
  }
  const kept = asPlanned && at(asPlanned.start, asPlanned.end, asPlanned.peopleIds.length)
  if (kept) return kept
  const ahead = kind === 'prep' && context.crowd && locks.length === 0 ? Math.max(from, doneBy - context.crowd.prepAheadMinutes) : null
  const starts = ahead === null ? [] : startsToTry(context, able, ahead, doneBy)
  for (let team = work.peopleMin; team <= Math.min(work.peopleMax, able.length); team++) {
    const length = minutesFor(work, multiple, team)
    for (const start of starts) {
      if (start + length > doneBy) break
      const booked = at(start, start + length, team)
      if (booked) return booked
    }
  }
  const ends = endsToTry(context, able, from, doneBy, locks.length > 0)
  for (let team = work.peopleMin; team <= Math.min(work.peopleMax, able.length); team++) {
    const length = minutesFor(work, multiple, team)
    for (const end of ends) {
      if (end - length < from) break
      const booked = at(end - length, end, team)
      if (booked) return booked
    }
  }
  return null
}

/**
 * The minutes at which work done by `doneBy` can end as late as possible, the latest first: that minute itself, and those before which
 * somebody becomes free. Where breaks or locks count too, every minute.
 */
function endsToTry(
  { calendar }: PlacingContext,
  able: readonly WorkingHours[],
  from: KitchenTime,
  doneBy: KitchenTime,
  isLocked: boolean,
): readonly KitchenTime[] {
  if (isLocked || able.some((hours) => hours.rest))
    return Array.from({ length: Math.max(0, doneBy - from + 1) }, (_, back) => doneBy - back)
  const ends = new Set([doneBy])
  for (const { person, until } of able) {
    if (until < doneBy) ends.add(until)
    for (const { start } of calendar.people.get(person.id) ?? []) if (start < doneBy && start > from) ends.add(start)
  }
  return [...ends].sort((a, b) => b - a)
}

/** The minutes at which work can start as early as possible from `first` on: that minute itself, and those at which somebody becomes free. */
function startsToTry(
  { calendar }: PlacingContext,
  able: readonly WorkingHours[],
  first: KitchenTime,
  doneBy: KitchenTime,
): readonly KitchenTime[] {
  const starts = new Set([first])
  for (const { person, from } of able) {
    if (from > first) starts.add(from)
    for (const { end } of calendar.people.get(person.id) ?? []) if (end > first && end < doneBy) starts.add(end)
  }
  return [...starts].sort((a, b) => a - b)
}
