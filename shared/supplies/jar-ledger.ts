import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import type { Mouth } from './lid-age'

/**
 * How jars move between a household and the group.
 *
 * - `brought`: the household lends them, empty, for a day or the season.
 * - `went-back-empty`: they go back as they came.
 * - `went-home-full`: jars with food in them, handed over to the household.
 * - `came-back-empty`: the household brings back glass that it ate from.
 * - `broke-here`, `broke-there`: written off; nobody owes glass that broke (common practice).
 */
export const MOVEMENT_KINDS = ['brought', 'went-back-empty', 'went-home-full', 'came-back-empty', 'broke-here', 'broke-there'] as const
export type MovementKind = (typeof MOVEMENT_KINDS)[number]

/** Whether the group then has more of the household's glass, or less. */
const SIGN: Readonly<Record<MovementKind, 1 | -1>> = {
  brought: 1,
  'came-back-empty': 1,
  'broke-there': 1,
  'went-back-empty': -1,
  'went-home-full': -1,
  'broke-here': -1,
}

/** One entry. */
export interface JarMovement {
  readonly id: string
  readonly householdId: string
  readonly size: JarSize
  readonly mouth: Mouth
  readonly kind: MovementKind
  /** Whole jars, 1 or more. */
  readonly jars: number
  /** The entry that this one takes back; it is of the same household, size, kind and number. */
  readonly corrects: string | null
}

/** How one household stands with the group in one size and mouth. */
export interface LedgerLine {
  readonly householdId: string
  readonly size: JarSize
  readonly mouth: Mouth
  readonly sums: Readonly<Record<MovementKind, number>>
  /** Above 0: the group has so many jars of the household's. Below 0: the household has so many of the group's. */
  readonly balance: number
}

/**
 * Adds the entries up, by household (in the order in which they first come), size and mouth. An entry that was taken back counts as if it had never been
 * made, and so does its taking back.
 */
export function jarLedger(movements: readonly JarMovement[]): LedgerLine[] {
  const takenBack = new Set(movements.flatMap(({ corrects }) => corrects ?? []))
  const standing = movements.filter(({ id, corrects }) => corrects === null && !takenBack.has(id))
  const households = [...new Set(standing.map(({ householdId }) => householdId))]
  return households.flatMap((householdId) =>
    JAR_SIZES.flatMap((size) =>
      (['regular', 'wide'] as const).flatMap((mouth) => {
        const own = standing.filter((each) => each.householdId === householdId && each.size === size && each.mouth === mouth)
        return own.length > 0 ? [lineOf(householdId, size, mouth, own)] : []
      }),
    ),
  )
}

function lineOf(householdId: string, size: JarSize, mouth: Mouth, own: readonly JarMovement[]): LedgerLine {
  const sumOf = (kind: MovementKind) => own.filter((each) => each.kind === kind).reduce((sum, { jars }) => sum + jars, 0)
  const sums = Object.fromEntries(MOVEMENT_KINDS.map((kind) => [kind, sumOf(kind)])) as Record<MovementKind, number>
  return { householdId, size, mouth, sums, balance: MOVEMENT_KINDS.reduce((sum, kind) => sum + SIGN[kind] * sums[kind], 0) }
}
