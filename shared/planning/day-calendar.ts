import { leavesRest, type RestRule } from '@/shared/planning/breaks'
import type { Minding, PlanPerson } from '@/shared/planning/day-problem'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What occupies a person. Hands-on work excludes everything but lifting jars at a canner one minds. */
export type Occupation = 'hands' | 'canner-hands' | 'kettle-watch' | 'canner-watch'

type Span = { readonly start: KitchenTime; readonly end: KitchenTime }
type PersonSpan = Span & { readonly occupation: Occupation; readonly minding: Minding | null }

/** Who and what is taken when, with a trail so that a placement that fails half way leaves no trace. */
export type DayCalendar = {
  readonly equipment: Map<string, Span[]>
  readonly people: Map<string, PersonSpan[]>
  readonly workMinutes: Map<string, number>
  /** Of each person asked about since their last booking: how many free minutes end at each minute of their hours. */
  readonly freeBefore: Map<string, { readonly hours: WorkingHours; readonly minutes: Uint16Array }>
  readonly trail: (() => void)[]
}

export const emptyCalendar = (): DayCalendar => ({
  equipment: new Map(),
  people: new Map(),
  workMinutes: new Map(),
  freeBefore: new Map(),
  trail: [],
})

/** Undoes everything taken since the trail had this length. */
export function rewind(calendar: DayCalendar, mark: number): void {
  while (calendar.trail.length > mark) calendar.trail.pop()?.()
}

/** True when no booking of this piece of equipment overlaps [start, end). */
export function isEquipmentFree(calendar: DayCalendar, id: string, start: KitchenTime, end: KitchenTime): boolean {
  const spans = calendar.equipment.get(id)
  return !spans?.some((span) => span.start < end && start < span.end)
}

/** Takes a piece of equipment for [start, end). */
export function takeEquipment(calendar: DayCalendar, id: string, start: KitchenTime, end: KitchenTime): void {
  const spans = spansOf(calendar.equipment, id)
  spans.push({ start, end })
  calendar.trail.push(() => spans.pop())
}

/** The end of the last booking, or the given time when there is none. */
export function freeFrom(calendar: DayCalendar, id: string, otherwise: KitchenTime): KitchenTime {
  return (calendar.equipment.get(id) ?? []).reduce((latest, span) => Math.max(latest, span.end), otherwise)
}

/** When a person may be given work: after their briefing, until they leave; `rest`: what that work must leave free. */
export type WorkingHours = {
  readonly person: PlanPerson
  readonly from: KitchenTime
  readonly until: KitchenTime
  readonly rest?: RestRule
}

/**
 * True when a person can do this besides what they already do in [start, end).
 *
 * Hands-on work stands alone. Lifting jars at a canner goes with minding canners. Watching a kettle goes with minding canners where
 * `alongside` allows it, one kettle at a time. Minding canners goes up to `cannersAtOnce`, all of one method. Breaks and the longest stretch of
 * work are kept.
 */
export function isPersonFree(
  calendar: DayCalendar,
  hours: WorkingHours,
  occupation: Occupation,
  start: KitchenTime,
  end: KitchenTime,
  minding: Minding | null = null,
): boolean {
  if (start < hours.from || end > hours.until) return false
  const spans = calendar.people.get(hours.person.id)
  if (!spans) return !hours.rest || leavesRest(hours.rest, [], { start, end })
  const wanted = { start, end, occupation, minding }
  let watched = false
  for (const span of spans) {
    if (span.start >= end || start >= span.end) continue
    if (!goTogether(span, wanted)) return false
    watched ||= span.occupation === 'canner-watch'
  }
  if (watched && occupation === 'canner-watch' && minding !== null && mostAtOnce(spans, start, end) >= minding.cannersAtOnce) return false
  return !hours.rest || leavesRest(hours.rest, spans, { start, end })
}

/** The same answer for hands-on work as `isPersonFree` gives, quick for somebody who is asked about often. */
export function areHandsFree(calendar: DayCalendar, hours: WorkingHours, start: KitchenTime, end: KitchenTime): boolean {
  if (start < hours.from || end > hours.until) return false
  const before = freeMinutesBefore(calendar, hours)[end - hours.from]
  if (before === undefined || before < end - start) return false
  return !hours.rest || leavesRest(hours.rest, calendar.people.get(hours.person.id) ?? [], { start, end })
}

function freeMinutesBefore({ freeBefore, people }: DayCalendar, hours: WorkingHours): Uint16Array {
  const known = freeBefore.get(hours.person.id)
  if (known?.hours === hours) return known.minutes
  const { from, until, person } = hours
  const minutes = new Uint16Array(Math.max(0, until - from + 1))
  const busy = [...(people.get(person.id) ?? [])].sort((a, b) => a.start - b.start)
  let free = from
  let next = 0
  for (let minute = from + 1; minute <= until; minute++) {
    for (let span = busy[next]; span && span.start < minute; span = busy[++next]) free = Math.max(free, span.end)
    minutes[minute - from] = Math.max(0, minute - free)
  }
  freeBefore.set(person.id, { hours, minutes })
  return minutes
}

/** Gives a person this occupation for [start, end) and counts the minutes as work. */
export function takePerson(
  calendar: DayCalendar,
  personId: string,
  occupation: Occupation,
  start: KitchenTime,
  end: KitchenTime,
  minding: Minding | null = null,
): void {
  const spans = spansOf(calendar.people, personId)
  const before = calendar.workMinutes.get(personId) ?? 0
  const freeBefore = calendar.freeBefore.get(personId)
  spans.push({ start, end, occupation, minding })
  calendar.workMinutes.set(personId, before + end - start)
  calendar.freeBefore.delete(personId)
  calendar.trail.push(() => {
    spans.pop()
    if (freeBefore) calendar.freeBefore.set(personId, freeBefore)
    else calendar.freeBefore.delete(personId)
    calendar.workMinutes.set(personId, before)
  })
}

function goTogether(a: PersonSpan, b: PersonSpan): boolean {
  const [first, second] = RANK[a.occupation] <= RANK[b.occupation] ? [a, b] : [b, a]
  if (second.occupation !== 'canner-watch') return false
  if (first.occupation === 'canner-hands') return true
  if (first.occupation === 'kettle-watch') return second.minding?.alongside === 'kettles'
  return first.occupation === 'canner-watch' && first.minding?.method === second.minding?.method
}

const RANK: Readonly<Record<Occupation, number>> = { hands: 0, 'canner-hands': 1, 'kettle-watch': 2, 'canner-watch': 3 }

function mostAtOnce(spans: readonly PersonSpan[], from: KitchenTime, to: KitchenTime): number {
  const watches = spans.filter((span) => span.occupation === 'canner-watch' && span.start < to && from < span.end)
  const moments = [from, ...watches.map((span) => Math.max(from, span.start))]
  return Math.max(...moments.map((moment) => watches.filter((span) => span.start <= moment && moment < span.end).length))
}

function spansOf<T>(map: Map<string, T[]>, id: string): T[] {
  const found = map.get(id)
  if (found) return found
  const made: T[] = []
  map.set(id, made)
  return made
}
