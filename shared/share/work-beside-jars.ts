import { inHouseholdOrder, type OfHousehold } from '@/shared/allocation/in-household-order'
import { largestRemainder } from '@/shared/allocation/largest-remainder'

/** What one household does for a day, and what it gets of it. Minutes are whole. */
export interface WorkAndJars extends OfHousehold {
  readonly promisedMinutes: number
  readonly plannedMinutes: number
  /** Null where nobody has counted. */
  readonly countedMinutes: number | null
  readonly jars: number
  readonly millilitres: number
}

/** Which minutes a household's part of the work is taken from: counted as soon as any are, else planned, else promised. */
export type WorkBasis = 'counted' | 'planned' | 'promised'

/** One line with its parts in whole percent; null where there is nothing to have a part of. */
export interface WorkLine extends WorkAndJars {
  readonly workPercent: number | null
  readonly foodPercent: number | null
}

/** All lines by household name, and their sums. */
export interface WorkTable {
  readonly basis: WorkBasis
  readonly lines: readonly WorkLine[]
  readonly sums: Omit<WorkAndJars, keyof OfHousehold | 'countedMinutes'> & { readonly countedMinutes: number }
}

/**
 * Each household's part of the work beside its part of the food, by name and never by size: it is for talking, not for ranking.
 *
 * Parts are whole percent that add up to 100, by largest remainders. Food is measured by volume, because a quart is not a half-pint. Households without
 * work and without jars are left out.
 */
export function workBesideJars(households: readonly WorkAndJars[]): WorkTable {
  const taking = inHouseholdOrder(households.filter((each) => minutesOf(each).some((minutes) => minutes > 0) || each.jars > 0))
  const total = (of: (line: WorkAndJars) => number) => taking.reduce((sum, line) => sum + of(line), 0)
  const counted = total(({ countedMinutes }) => countedMinutes ?? 0)
  const planned = total(({ plannedMinutes }) => plannedMinutes)
  const basis = counted > 0 ? 'counted' : planned > 0 ? 'planned' : 'promised'
  const work = percents(taking.map((line) => line[`${basis}Minutes`] ?? 0))
  const food = percents(taking.map(({ millilitres }) => Math.round(millilitres)))
  return {
    basis,
    lines: taking.map((line, index) => ({ ...line, workPercent: work[index] ?? null, foodPercent: food[index] ?? null })),
    sums: {
      ...{ promisedMinutes: total(({ promisedMinutes }) => promisedMinutes), plannedMinutes: planned, countedMinutes: counted },
      ...{ jars: total(({ jars }) => jars), millilitres: total(({ millilitres }) => millilitres) },
    },
  }
}

const minutesOf = ({ promisedMinutes, plannedMinutes, countedMinutes }: WorkAndJars) => [
  promisedMinutes,
  plannedMinutes,
  countedMinutes ?? 0,
]

/** None where there is nothing to have a part of. */
const percents = (weights: readonly number[]): number[] => (weights.some((weight) => weight > 0) ? largestRemainder(100, weights) : [])
