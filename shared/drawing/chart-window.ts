/** How much of the day a chart shows at once, in minutes; null is the whole day. */
export const CHART_SPANS = [null, 240, 60, 10] as const
export type ChartSpan = (typeof CHART_SPANS)[number]

/** The part of a day that is drawn, in minutes of the day: `from` < `to`. */
export type ChartWindow = {
  readonly from: number
  readonly to: number
  /** Lines across stand this many minutes apart; every one has its time. */
  readonly tickMinutes: number
  /** Where the windows before and after begin; null where the day is over. */
  readonly earlierFrom: number | null
  readonly laterFrom: number | null
}

const TICK_MINUTES = { 240: 60, 60: 10, 10: 2 } as const

/**
 * The window of `span` minutes that begins at `wanted`, kept inside the day and on its own lines.
 *
 * Neighbouring windows share half of what they show when one turns from one to the next, so that nothing is cut on both.
 *
 * @param day - first and last minute that has something to show
 * @param wanted - the minute asked for; null shows `now`, or the beginning of the day when there is none
 */
export function chartWindow(
  day: { readonly from: number; readonly to: number },
  span: ChartSpan,
  wanted: number | null,
  now: number | null,
): ChartWindow {
  const first = Math.floor(day.from / 30) * 30
  const last = Math.max(first + 30, Math.ceil(day.to / 30) * 30)
  if (span === null) return { from: first, to: last, tickMinutes: 60, earlierFrom: null, laterFrom: null }
  const tickMinutes = TICK_MINUTES[span]
  const latest = Math.max(first, Math.ceil((last - span) / tickMinutes) * tickMinutes)
  const asked = wanted ?? (now === null ? first : now - span / 4)
  const from = Math.min(latest, Math.max(first, Math.floor(asked / tickMinutes) * tickMinutes))
  const step = span / 2
  return {
    ...{ from, to: from + span, tickMinutes },
    earlierFrom: from > first ? Math.max(first, from - step) : null,
    laterFrom: from < latest ? Math.min(latest, from + step) : null,
  }
}

/** The same day cut into windows of `span` minutes one after another, for paper that is joined to a roll. */
export function chartStrips(day: { readonly from: number; readonly to: number }, span: 120 | 60): ChartWindow[] {
  const whole = chartWindow(day, null, null, null)
  const count = Math.max(1, Math.ceil((whole.to - whole.from) / span))
  return Array.from({ length: count }, (_, strip) => ({
    ...{ from: whole.from + strip * span, to: whole.from + (strip + 1) * span },
    ...{ tickMinutes: 10, earlierFrom: null, laterFrom: null },
  }))
}

/** The times of the lines across, first to last inside the window. */
export function chartTicks({ from, to, tickMinutes }: Pick<ChartWindow, 'from' | 'to' | 'tickMinutes'>): number[] {
  const first = Math.ceil(from / tickMinutes) * tickMinutes
  return Array.from({ length: Math.max(0, Math.ceil((to - first) / tickMinutes)) }, (_, index) => first + index * tickMinutes)
}

/** Where a minute lies across the window, from 0 to 1; beyond it, on its edge. */
export const acrossWindow = ({ from, to }: Pick<ChartWindow, 'from' | 'to'>, at: number): number =>
  Math.min(1, Math.max(0, (at - from) / (to - from)))
