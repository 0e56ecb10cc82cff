import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'

/** Everything that was counted of one jar size on one day. Whole jars, lids and bands, 0 or more. */
export interface DayCount {
  readonly brought: number
  readonly bought: number
  readonly returnedEmpty: number
  readonly brokenEmpty: number
  readonly filled: number
  /** Broken with food in them, in the canner or after. */
  readonly brokenFilled: number
  /** Sealed at their first check. */
  readonly sealed: number
  readonly unsealed: number
  /** Of the unsealed: sealed after a whole second process within 24 hours. */
  readonly reprocessed: number
  /** Of the unsealed: chilled, to be eaten first. */
  readonly refrigerated: number
  /** Of the unsealed: thrown out. */
  readonly discardedUnsealed: number
  readonly sharedOut: number
  readonly held: number
  /** Sealed once, thrown out later. */
  readonly discardedSealed: number
  /** Sealed and still in the store: unclaimed or not yet collected. */
  readonly inStore: number
  readonly lidsBrought: number
  readonly lidsBought: number
  /** Used up on jars, second lids of reprocessed jars included. */
  readonly lidsUsed: number
  readonly lidsSpoiled: number
  readonly lidsLeft: number
  readonly bandsBrought: number
  readonly bandsBought: number
  readonly bandsReturned: number
  /** Bent or rusted, thrown out. */
  readonly bandsDiscarded: number
  /** Still on jars that went home. */
  readonly bandsOnJars: number
}

/** The name of a counted thing. */
export type Counted = keyof DayCount

/** The equations of a day's balance, in the order the things move. */
export type BalanceName = 'empty-jars' | 'after-the-canner' | 'unsealed-jars' | 'sealed-jars' | 'lids' | 'bands'

/** One equation with its terms: what came in, where it went, and what does not add up. */
export interface BalanceLine {
  readonly name: BalanceName
  readonly size: JarSize
  readonly cameIn: readonly (readonly [Counted, number])[]
  readonly wentOut: readonly (readonly [Counted, number])[]
  /** Came in less went out: above 0 something is missing, below 0 more is accounted for than there was. */
  readonly difference: number
}

/** The balance of a day: every equation of every size, and those that do not add up. */
export interface JarBalance {
  readonly lines: readonly BalanceLine[]
  readonly differences: readonly BalanceLine[]
}

const EQUATIONS: readonly (readonly [BalanceName, readonly Counted[], readonly Counted[]])[] = [
  ['empty-jars', ['brought', 'bought'], ['filled', 'returnedEmpty', 'brokenEmpty']],
  ['after-the-canner', ['filled'], ['sealed', 'unsealed', 'brokenFilled']],
  ['unsealed-jars', ['unsealed'], ['reprocessed', 'refrigerated', 'discardedUnsealed']],
  ['sealed-jars', ['sealed', 'reprocessed'], ['sharedOut', 'held', 'discardedSealed', 'inStore']],
  ['lids', ['lidsBrought', 'lidsBought'], ['lidsUsed', 'lidsSpoiled', 'lidsLeft']],
  ['bands', ['bandsBrought', 'bandsBought'], ['bandsReturned', 'bandsDiscarded', 'bandsOnJars']],
]

/**
 * Balances the jars, lids and bands of a canning day: whatever came in has to have gone somewhere, size by size.
 *
 * Every jar counts once in every equation that it takes part in; a jar sealed at the second attempt is `unsealed` and `reprocessed`.
 *
 * @throws RangeError when a count is not a whole number of 0 or more
 */
export function balanceJars(counts: Readonly<Partial<Record<JarSize, DayCount>>>): JarBalance {
  const lines = JAR_SIZES.flatMap((size) => {
    const count = counts[size]
    return count ? EQUATIONS.map(([name, ins, outs]) => balanceLine(size, count, name, ins, outs)) : []
  })
  return { lines, differences: lines.filter((line) => line.difference !== 0) }
}

/** A day on which nothing of a size was counted, to fill in from. */
export const NOTHING_COUNTED: DayCount = {
  brought: 0,
  bought: 0,
  returnedEmpty: 0,
  brokenEmpty: 0,
  filled: 0,
  brokenFilled: 0,
  sealed: 0,
  unsealed: 0,
  reprocessed: 0,
  refrigerated: 0,
  discardedUnsealed: 0,
  sharedOut: 0,
  held: 0,
  discardedSealed: 0,
  inStore: 0,
  lidsBrought: 0,
  lidsBought: 0,
  lidsUsed: 0,
  lidsSpoiled: 0,
  lidsLeft: 0,
  bandsBrought: 0,
  bandsBought: 0,
  bandsReturned: 0,
  bandsDiscarded: 0,
  bandsOnJars: 0,
}

function balanceLine(size: JarSize, count: DayCount, name: BalanceName, ins: readonly Counted[], outs: readonly Counted[]): BalanceLine {
  const terms = (names: readonly Counted[]) => names.map((each) => [each, whole(count[each], each)] as const)
  const total = (of: readonly (readonly [Counted, number])[]) => of.reduce((sum, [, number]) => sum + number, 0)
  const [cameIn, wentOut] = [terms(ins), terms(outs)]
  return { name, size, cameIn, wentOut, difference: total(cameIn) - total(wentOut) }
}

function whole(number: number, name: Counted): number {
  if (!Number.isSafeInteger(number) || number < 0) throw new RangeError(`${name} is not a whole number of 0 or more: ${number}`)
  return number
}
