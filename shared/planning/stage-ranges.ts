import type { MinuteRange, PlanPreparation } from '@/shared/planning/day-problem'

/** The three stages of a preparation with their ranges, none missing; minutes, prep in person-minutes of one tested batch. */
export type KnownRanges = { readonly prep: MinuteRange; readonly kettle: MinuteRange; readonly comeUp: MinuteRange }

/**
 * How far a stage strays from its planning figure where nothing better is known, as shares of it (common practice).
 *
 * Come-up: 10 to 16 min about 12 for hot packs, 20 to 30 about 22 for raw packs.
 */
const USUAL = { prep: { low: 0.8, high: 1.5 }, kettle: { low: 0.9, high: 1.25 }, comeUp: { low: 0.85, high: 1.35 } } as const

/** The ranges of a preparation: those that its recipe gives, and the usual spread about the planning figure for the others. */
export function rangesOf({ prep, kettleMinutes, cycle, ranges = {} }: PlanPreparation): KnownRanges {
  return {
    prep: ranges.prep ?? usual(prep.workMinutes, USUAL.prep),
    kettle: ranges.kettle ?? usual(kettleMinutes, USUAL.kettle),
    comeUp: ranges.comeUp ?? usual(cycle.comeUpMinutes, USUAL.comeUp),
  }
}

const usual = (typical: number, { low, high }: { readonly low: number; readonly high: number }): MinuteRange => ({
  low: typical * low,
  typical,
  high: typical * high,
  basis: 'common practice',
})

/**
 * Turns a share from 0 (the low end) to 1 (the high end) into the value below which that share of a triangular spread lies.
 *
 * Source: the inverse of the triangular distribution's cumulative function, any textbook of statistics.
 */
export function drawerOf({ low, typical, high }: Omit<MinuteRange, 'basis'>): (share: number) => number {
  const width = high - low
  if (width <= 0) return () => typical
  const turn = (typical - low) / width
  const [rising, falling] = [width * (typical - low), width * (high - typical)]
  return (share) => (share < turn ? low + Math.sqrt(share * rising) : high - Math.sqrt((1 - share) * falling))
}

/** The value below which that share of the range lies, once. */
export const atShare = (range: Omit<MinuteRange, 'basis'>, share: number): number => drawerOf(range)(share)
