import {
  isEquipmentFree,
  isPersonFree,
  type Occupation,
  rewind,
  takeEquipment,
  takePerson,
  type WorkingHours,
} from '@/shared/planning/day-calendar'
import type { BurnerUse, PlanBurner, PlanKettle, PlanPreparation, StageWork } from '@/shared/planning/day-problem'
import type { PlanTaskKind } from '@/shared/planning/day-plan'
import { burnerServes, kettleHeat } from '@/shared/planning/kitchen-set-up'
import { count, type FillRule, type PlacingContext } from '@/shared/planning/placing-context'
import { kettlesFor, type SplitBatch } from '@/shared/planning/split-demand'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Washed jars are filled within this many minutes, while they are still hot (common practice). */
export const WASHED_JARS_STAY_HOT_MINUTES = 30

type Booked = { readonly start: KitchenTime; readonly end: KitchenTime; readonly peopleIds: readonly string[] }

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
  preparation: PlanPreparation,
  ends: readonly KitchenTime[],
): PlacedBatch | null {
  const mark = context.calendar.trail.length
  for (const fillEnd of ends) {
    if (context.effort.left <= 0) return null
    for (let team = preparation.fill.peopleMin; team <= preparation.fill.peopleMax; team++) {
      const placed = fillAndCook(context, batch, preparation, fillEnd, team)
      if (placed) return placed
      rewind(context.calendar, mark)
    }
  }
  return null
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
  preparation: PlanPreparation,
  fillEnd: KitchenTime,
  team: number,
): PlacedBatch | null {
  context.effort.left--
  const fillStart = fillEnd - minutesFor(preparation.fill, batch.multiple, team)
  const tableIndex = freeTable(context, fillStart, fillEnd)
  if (tableIndex < 0) return count(context.blocked, 'table')
  const fillers = pickTeam(context, 'fill', preparation.fill, preparation, 'hands', fillStart, fillEnd, team)
  if (!fillers) return count(context.blocked, 'fill')
  takeEquipment(context.calendar, tableName(tableIndex), fillStart, fillEnd)

  const mark = context.calendar.trail.length
  for (let cookEnd = fillStart; cookEnd >= fillStart - preparation.cookedToFillingLimitMinutes; cookEnd--) {
    const kettle = cookAndPrepare(context, batch, preparation, cookEnd, fillStart, fillEnd)
    if (kettle) return { batch, ...kettle, fillStart, fillEnd, tableIndex, fill: { start: fillStart, end: fillEnd, peopleIds: fillers } }
    rewind(context.calendar, mark)
  }
  return null
}

type CookedBatch = Pick<PlacedBatch, 'kettle' | 'burner' | 'cookStart' | 'cookEnd' | 'cook' | 'wash' | 'prep' | 'jarPot'>

function cookAndPrepare(
  context: PlacingContext,
  batch: SplitBatch,
  preparation: PlanPreparation,
  cookEnd: KitchenTime,
  fillStart: KitchenTime,
  fillEnd: KitchenTime,
): CookedBatch | null {
  const cookStart = cookEnd - preparation.kettleMinutes
  const occupation: Occupation = preparation.cook.attention === 'watch' ? 'kettle-watch' : 'hands'
  const cooks = pickTeam(context, 'cook', preparation.cook, preparation, occupation, cookStart, fillStart, preparation.cook.peopleMin)
  if (!cooks) return count(context.blocked, 'cook')
  const pot = takePot(context, batch, preparation, cookStart, fillEnd)
  if (!pot) return null
  const jarPot = takeJarPot(context, preparation, fillStart, fillEnd)
  if (jarPot === 'none') return count(context.blocked, 'burner')
  const washDone = jarPot ? jarPot.start : fillStart
  const wash = bookEarlier(
    context,
    'wash',
    preparation.wash,
    preparation,
    batch.multiple,
    washDone,
    washDone - WASHED_JARS_STAY_HOT_MINUTES,
  )
  if (!wash) return count(context.blocked, 'wash')
  const prepDone = preparation.prepBefore === 'cook' ? cookStart : fillStart
  const prep = bookEarlier(context, 'prep', preparation.prep, preparation, batch.multiple, prepDone, context.problem.window.peopleArriveAt)
  if (!prep) return count(context.blocked, 'prep')
  return { ...pot, cookStart, cookEnd, cook: { start: cookStart, end: fillStart, peopleIds: cooks }, wash, prep, jarPot }
}

/** Minutes a team needs for one kettle batch, rounded up; 0 when the stage has no work. */
export const minutesFor = (work: StageWork, multiple: number, team: number): number =>
  Math.ceil((work.workMinutes * multiple) / Math.max(1, team) - 1e-9)

export const tableName = (index: number) => `fill-table-${index}`

function freeTable(context: PlacingContext, start: KitchenTime, end: KitchenTime): number {
  for (let index = 0; index < context.problem.fillTables; index++) {
    if (isEquipmentFree(context.calendar, tableName(index), start, end)) return index
  }
  return -1
}

function takePot(context: PlacingContext, batch: SplitBatch, preparation: PlanPreparation, start: KitchenTime, end: KitchenTime) {
  const { calendar, problem, setUp } = context
  const litres = preparation.batchLitres * batch.multiple
  const kettle = kettlesFor(problem, preparation)
    .filter((entry) => entry.litres >= litres && isEquipmentFree(calendar, entry.id, start, end + entry.washMinutes))
    .reduce<PlanKettle | null>((best, entry) => (best && best.litres <= entry.litres ? best : entry), null)
  if (!kettle) return count(context.blocked, 'kettle')
  const burner = takeBurner(context, setUp.kettleBurners, kettleHeat(preparation), start, end)
  if (!burner) return count(context.blocked, 'burner')
  takeEquipment(calendar, kettle.id, start, end + kettle.washMinutes)
  return { kettle, burner }
}

/** The most specialised free burner first, so that rings which serve everything stay free. */
function takeBurner(context: PlacingContext, burners: readonly PlanBurner[], use: BurnerUse, start: KitchenTime, end: KitchenTime) {
  const { calendar } = context
  const free = burners.filter((burner) => burnerServes(burner, use) && isEquipmentFree(calendar, burner.id, start, end))
  const burner = free.filter((entry) => circuitCarries(context, entry, start, end)).sort((a, b) => usesOf(a) - usesOf(b))[0]
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
  preparation: PlanPreparation,
  fillStart: KitchenTime,
  fillEnd: KitchenTime,
): PlacedBatch['jarPot'] | 'none' {
  if (preparation.jarTreatment !== 'boiled-in-pot') return null
  const start = fillStart - preparation.jarBoilMinutes
  const kettle = context.problem.kettles.find(
    (entry) => entry.use === 'jars' && isEquipmentFree(context.calendar, entry.id, start, fillEnd),
  )
  const burner = kettle && takeBurner(context, context.setUp.kettleBurners, 'jars', start, fillEnd)
  if (!kettle || !burner) return 'none'
  takeEquipment(context.calendar, kettle.id, start, fillEnd)
  return { kettle, burner, start }
}

/** Books work that may be done ahead: as late as fits before `doneBy`, with as few people as fit. */
function bookEarlier(
  context: PlacingContext,
  kind: PlanTaskKind,
  work: StageWork,
  preparation: PlanPreparation,
  multiple: number,
  doneBy: KitchenTime,
  notBefore: KitchenTime,
): Booked | null {
  if (work.workMinutes === 0) return { start: doneBy, end: doneBy, peopleIds: [] }
  const able = ablePeople(context, kind, work, preparation)
  for (let team = work.peopleMin; team <= Math.min(work.peopleMax, able.length); team++) {
    const length = minutesFor(work, multiple, team)
    for (let end = doneBy; end - length >= notBefore; end--) {
      if (!enoughFree(context, able, end - length, end, team)) continue
      const peopleIds = pickTeam(context, kind, work, preparation, 'hands', end - length, end, team)
      if (peopleIds) return { start: end - length, end, peopleIds }
    }
  }
  return null
}

function enoughFree(
  { calendar }: PlacingContext,
  able: readonly WorkingHours[],
  start: KitchenTime,
  end: KitchenTime,
  team: number,
): boolean {
  let found = 0
  for (const hours of able) {
    if (isPersonFree(calendar, hours, 'hands', start, end) && ++found === team) return true
  }
  return false
}

/** The first people who may and can, those least needed elsewhere and least worked first; ties by their order in the list. */
export function pickTeam(
  context: PlacingContext,
  kind: PlanTaskKind,
  work: StageWork,
  preparation: PlanPreparation,
  occupation: Occupation,
  start: KitchenTime,
  end: KitchenTime,
  size: number,
): string[] | null {
  if (work.workMinutes === 0) return []
  const { calendar } = context
  const able = ablePeople(context, kind, work, preparation)
  if (able.length < size) return null
  const free = able.filter((hours) => isPersonFree(calendar, hours, occupation, start, end))
  if (free.length < size) return null
  const worked = (hours: WorkingHours) => calendar.workMinutes.get(hours.person.id) ?? 0
  const chosen = free
    .map((hours, index) => ({ id: hours.person.id, index, cost: scarcity(context, hours) * 45 + worked(hours) }))
    .sort((a, b) => a.cost - b.cost || a.index - b.index)
    .slice(0, size)
  for (const { id } of chosen) takePerson(calendar, id, occupation, start, end)
  return chosen.map(({ id }) => id)
}

function ablePeople(context: PlacingContext, kind: PlanTaskKind, work: StageWork, preparation: PlanPreparation): readonly WorkingHours[] {
  const ofPreparation = context.able.get(preparation) ?? new Map<PlanTaskKind, readonly WorkingHours[]>()
  const known = ofPreparation.get(kind)
  if (known) return known
  const found = context.setUp.hours.filter((hours) => mayDo(hours.person, kind, work.skills, preparation))
  context.able.set(preparation, ofPreparation.set(kind, found))
  return found
}

/** How much the canners, the kettles and the fill tables need this person: 0 for somebody with no such skill. */
function scarcity({ problem }: PlacingContext, { person }: WorkingHours): number {
  if (person.ageClass !== 'adult') return 0
  const has = (skill: string) => person.skills.includes(skill)
  const operates = problem.minding.some((entry) => has(entry.skill)) ? 3 : 0
  const cooks = problem.preparations.some((entry) => entry.cook.skills.some(has)) && !person.limits.includes('seated') ? 2 : 0
  return operates + cooks + (problem.preparations.some((entry) => entry.fill.skills.some(has)) ? 1 : 0)
}
