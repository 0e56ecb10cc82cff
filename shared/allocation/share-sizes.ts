import { inHouseholdOrder } from '@/shared/allocation/in-household-order'
import { takeLargest } from './take-largest'
import { JAR_MILLILITRES, JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'

/** What one household asks for of one product, size by size. Whole jars. */
export interface SizedClaim {
  readonly householdId: string
  readonly householdName: string
  readonly jars: Readonly<Partial<Record<JarSize, number>>>
}

/** What one household gets, size by size, and how far that is from its exact part by volume. */
export interface SizedShare {
  readonly householdId: string
  readonly householdName: string
  readonly jars: Readonly<Partial<Record<JarSize, number>>>
  readonly millilitres: number
  /** Its exact part of every size added up, in millilitres; not rounded. */
  readonly target: number
}

/** The shares of one product in several sizes. */
export interface SizedTable {
  readonly shares: readonly SizedShare[]
  /** The largest difference between what a household gets and its exact part, in millilitres. */
  readonly worstDeviation: number
}

/**
 * Shares several jar sizes of one product together, in proportion to the claims of each size, so that nobody is favoured twice.
 *
 * Sizes go from large to small. What rounding gave a household too much or too little of one size, in millilitres, is carried into its part of the
 * next. Each size by itself: whole parts first, then one each to the largest fractions, ties by household name, never above the claim.
 * Fractions are kept exactly over one common denominator.
 *
 * @param sealed - whole jars to share of each size
 * @throws RangeError for jars that are not whole or below 0
 */
export function shareSizes(sealed: Readonly<Partial<Record<JarSize, number>>>, claims: readonly SizedClaim[]): SizedTable {
  const households = inHouseholdOrder(claims)
  const rows = sizeRows(sealed, households)
  const common = rows.reduce((product, row) => leastCommonMultiple(product, BigInt(row.asked)), 1n)
  const carried = households.map(() => 0n)
  const given = rows.map((row) => {
    const jarUnit = BigInt(row.millilitres) * common
    const wanted = row.claims.map((claim, index) => (BigInt(row.jars * claim) * jarUnit) / BigInt(row.asked) + (carried[index] ?? 0n))
    const jars = roundSize(row, wanted, jarUnit)
    for (const [index, count] of jars.entries()) carried[index] = (wanted[index] ?? 0n) - BigInt(count) * jarUnit
    return jars
  })
  return toTable(households, rows, given, carried, common)
}

/**
 * The smallest possible largest deviation for the same sharing, by trying everything; undefined when there is too much to try, as with more than fifty
 * households.
 *
 * @param mostTries - how many partial sharings are looked at before giving up
 */
export function bestWorstDeviation(
  sealed: Readonly<Partial<Record<JarSize, number>>>,
  claims: readonly SizedClaim[],
  mostTries = 2_000_000,
): number | undefined {
  if (claims.length > MOST_TRIED) return undefined
  const rows = sizeRows(sealed, claims)
  const targets = claims.map((_, index) =>
    rows.reduce((sum, row) => sum + (row.jars * (row.claims[index] ?? 0) * row.millilitres) / row.asked, 0),
  )
  const search = { rows, targets, best: Number.POSITIVE_INFINITY, tries: 0, mostTries }
  tryHousehold(
    search,
    0,
    rows.map((row) => row.jars),
    0,
  )
  return search.tries > mostTries ? undefined : search.best
}

/** A search goes one step deeper for each household. */
const MOST_TRIED = 50

interface SizeRow {
  readonly size: JarSize
  readonly millilitres: number
  /** Jars to give out: no more than were asked for. */
  readonly jars: number
  readonly asked: number
  readonly claims: readonly number[]
}

function sizeRows(sealed: Readonly<Partial<Record<JarSize, number>>>, claims: readonly SizedClaim[]): SizeRow[] {
  return [...JAR_SIZES].reverse().flatMap((size) => {
    const asks = claims.map((claim) => whole(claim.jars[size] ?? 0))
    const asked = asks.reduce((sum, jars) => sum + jars, 0)
    const jars = Math.min(whole(sealed[size] ?? 0), asked)
    return asked > 0 ? [{ size, millilitres: JAR_MILLILITRES[size], jars, asked, claims: asks }] : []
  })
}

function whole(jars: number): number {
  if (!Number.isSafeInteger(jars) || jars < 0) throw new RangeError(`Not a whole number of jars: ${jars}`)
  return jars
}

/** Whole parts between 0 and the claim; then jars over go to, and jars too many come from, whoever is furthest from the part wanted. */
function roundSize(row: SizeRow, wanted: readonly bigint[], jarUnit: bigint): number[] {
  const jars = wanted.map((part, index) => Math.min(row.claims[index] ?? 0, part < 0n ? 0 : Number(part / jarUnit)))
  const over = row.jars - jars.reduce((sum, count) => sum + count, 0)
  const step = Math.sign(over)
  takeLargest(Math.abs(over), {
    size: jars.length,
    worthOf: (index) => ((wanted[index] ?? 0n) - BigInt(jars[index] ?? 0) * jarUnit) * BigInt(step),
    isOpen: (index) => (step > 0 ? (jars[index] ?? 0) < (row.claims[index] ?? 0) : (jars[index] ?? 0) > 0),
    take: (index) => {
      jars[index] = (jars[index] ?? 0) + step
    },
  })
  return jars
}

function toTable(
  households: readonly SizedClaim[],
  rows: readonly SizeRow[],
  given: readonly (readonly number[])[],
  carried: readonly bigint[],
  common: bigint,
): SizedTable {
  const shares = households.map(({ householdId, householdName }, index) => {
    const jars = Object.fromEntries(rows.map((row, each) => [row.size, given[each]?.[index] ?? 0]))
    const millilitres = rows.reduce((sum, row, each) => sum + row.millilitres * (given[each]?.[index] ?? 0), 0)
    return { householdId, householdName, jars, millilitres, target: millilitres + Number(carried[index] ?? 0n) / Number(common) }
  })
  const worstDeviation = shares.reduce((worst, share) => Math.max(worst, Math.abs(share.target - share.millilitres)), 0)
  return { shares, worstDeviation }
}

interface Search {
  readonly rows: readonly SizeRow[]
  readonly targets: readonly number[]
  readonly mostTries: number
  best: number
  tries: number
}

/** Gives one household every possible mix of what is left, and goes on to the next. */
function tryHousehold(search: Search, index: number, left: readonly number[], worst: number): void {
  search.tries += 1
  if (worst >= search.best || search.tries > search.mostTries) return
  if (index === search.targets.length) {
    if (left.every((jars) => jars === 0)) search.best = worst
    return
  }
  for (const mix of mixes(search.rows, index, left)) {
    const millilitres = search.rows.reduce((sum, row, each) => sum + row.millilitres * (mix[each] ?? 0), 0)
    const deviation = Math.abs(millilitres - (search.targets[index] ?? 0))
    const rest = left.map((jars, each) => jars - (mix[each] ?? 0))
    tryHousehold(search, index + 1, rest, Math.max(worst, deviation))
  }
}

function mixes(rows: readonly SizeRow[], index: number, left: readonly number[]): number[][] {
  return rows.reduce<number[][]>(
    (all, row, each) => {
      const most = Math.min(row.claims[index] ?? 0, left[each] ?? 0)
      return all.flatMap((mix) => Array.from({ length: most + 1 }, (_, jars) => [...mix, jars]))
    },
    [[]],
  )
}

const leastCommonMultiple = (a: bigint, b: bigint) => (a / greatestCommonDivisor(a, b)) * b

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonDivisor(b, a % b)
}
