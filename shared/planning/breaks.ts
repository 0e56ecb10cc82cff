import type { BreakRule, DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * Who works longer than six hours has half an hour to sit down, and nobody works five hours on end (common practice; local rules for paid
 * work may ask for more).
 */
export const COMMON_BREAKS: BreakRule = { longerThanMinutes: 360, minutes: 30, longestStretchMinutes: 300 }

/** A pause from this length ends a stretch of work, minutes (common practice). */
export const PAUSE_MINUTES = 10

/** How far a break may lie from the evenly spaced minute, before or after (common practice). */
const BREAK_PLAY_MINUTES = 90

/** A break of so many minutes lies somewhere inside [from, to]. */
export type BreakWindow = { readonly from: KitchenTime; readonly to: KitchenTime; readonly minutes: number }

/** What one person's work must leave free. */
export type RestRule = { readonly windows: readonly BreakWindow[]; readonly longestStretchMinutes: number }

type Span = { readonly start: KitchenTime; readonly end: KitchenTime }

/** The day's rule: its own, or common practice where it names none; null where the day asks for no breaks. */
export const breakRuleOf = ({ breaks }: Pick<DayProblem, 'breaks'>): BreakRule | null => (breaks === undefined ? COMMON_BREAKS : breaks)

/**
 * What a person's work must leave free, or undefined when their hours are too short for the rule to matter.
 *
 * One break for hours over `longerThanMinutes`, two for over twice as long, and so on, evenly spaced over their hours.
 */
export function restRuleOf(
  problem: Pick<DayProblem, 'breaks' | 'window'>,
  person: Pick<PlanPerson, 'from' | 'until'>,
): RestRule | undefined {
  const rule = breakRuleOf(problem)
  if (!rule) return undefined
  const from = Math.max(person.from, problem.window.peopleArriveAt)
  const length = Math.min(person.until, problem.window.hardEnd) - from
  const count = Math.max(0, Math.ceil(length / rule.longerThanMinutes) - 1)
  if (count === 0 && length <= rule.longestStretchMinutes) return undefined
  const windows = Array.from({ length: count }, (_, index) => {
    const middle = from + Math.round((length * (index + 1)) / (count + 1))
    return { from: middle - BREAK_PLAY_MINUTES, to: middle + BREAK_PLAY_MINUTES, minutes: rule.minutes }
  })
  return { windows, longestStretchMinutes: rule.longestStretchMinutes }
}

/** Does one more piece of work leave room for each break, and no stretch of work too long? What was broken before is not counted against it. */
export function leavesRest(rule: RestRule, spans: readonly Span[], added: Span): boolean {
  for (const window of rule.windows) {
    if (added.start >= window.to || window.from >= added.end) continue
    if (freeIn(window, [...spans, added]) === null && freeIn(window, spans) !== null) return false
  }
  const { start, end } = stretchAround(spans, added)
  return end - start <= rule.longestStretchMinutes || end - start <= added.end - added.start
}

/** The start of the free time for a break that lies nearest the middle of its window; null when there is none. */
export function freeIn({ from, to, minutes }: BreakWindow, spans: readonly Span[]): KitchenTime | null {
  const busy = spans.filter((span) => span.start < to && from < span.end).sort((a, b) => a.start - b.start)
  const wish = (from + to - minutes) / 2
  let best: KitchenTime | null = null
  let free = from
  for (const { start, end } of [...busy, { start: to, end: to }]) {
    if (start - free >= minutes) {
      const nearest = Math.min(Math.max(Math.floor(wish), free), start - minutes)
      if (best === null || Math.abs(nearest - wish) < Math.abs(best - wish)) best = nearest
    }
    free = Math.max(free, end)
  }
  return best
}

function stretchAround(spans: readonly Span[], added: Span): Span {
  let { start, end } = added
  for (let grown = true; grown; ) {
    grown = false
    for (const span of spans) {
      if (span.start - end >= PAUSE_MINUTES || start - span.end >= PAUSE_MINUTES || (span.start >= start && span.end <= end)) continue
      start = Math.min(start, span.start)
      end = Math.max(end, span.end)
      grown = true
    }
  }
  return { start, end }
}
