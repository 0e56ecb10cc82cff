import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { type BalanceLine, balanceJars, type DayCount, NOTHING_COUNTED } from '@/shared/supplies/balance-jars'

/** How many filled jars of one size ended in one way. `seal` is how the first check came out, null when there was none. */
export interface JarTally {
  readonly jarSize: JarSize
  readonly state: string
  readonly seal: 'sealed' | 'unsealed' | null
  /** No process: chilled as soon as they were filled, so every whole one counts as refrigerated, wherever it stands now. */
  readonly isCold?: boolean
  readonly jars: number
  readonly lidsUsed: number
}

/** Empty jars of one size as they were counted by hand. */
export interface EmptyCount {
  readonly brought: number
  readonly bought: number
  readonly returned: number
  readonly brokenEmpty: number
}

/** Lids and bands as they were counted by hand; they fit several sizes, so they are counted together. */
export interface LidCount {
  readonly lidsAtStart: number
  readonly lidsSpoiled: number
  readonly lidsLeft: number
  readonly bandsAtStart: number
  readonly bandsReturned: number
  readonly bandsDiscarded: number
  readonly bandsOnJars: number
}

/** The balance of a day, ready to be read: what every filled jar came to, and what does not add up. */
export interface DayBalance {
  readonly lines: readonly BalanceLine[]
  readonly differences: readonly BalanceLine[]
  /** Jars whose end is not known yet: in no canner, or not checked. */
  readonly unsettled: number
}

const NO_EMPTIES: EmptyCount = { brought: 0, bought: 0, returned: 0, brokenEmpty: 0 }

/**
 * Balances a day: jars by size, lids and bands over all sizes together.
 *
 * A jar that was chilled or thrown out without a seal check counts as unsealed; one that broke after its check counts as thrown out.
 */
export function balanceDay(
  tallies: readonly JarTally[],
  empties: Readonly<Partial<Record<JarSize, EmptyCount>>>,
  lids: LidCount,
): DayBalance {
  const sizes = JAR_SIZES.filter((size) => tallies.some((tally) => tally.jarSize === size) || empties[size])
  const counts = Object.fromEntries(
    sizes.map((size) => [
      size,
      countSize(
        tallies.filter((tally) => tally.jarSize === size),
        empties[size] ?? NO_EMPTIES,
      ),
    ]),
  )
  const jars = balanceJars(counts).lines.filter(({ name }) => name !== 'lids' && name !== 'bands')
  const together = balanceJars({ [sizes[0] ?? 'pint']: countLids(tallies, lids) }).lines.filter(
    ({ name }) => name === 'lids' || name === 'bands',
  )
  const lines = [...jars, ...together]
  const unsettled = sum(tallies.filter(({ state }) => state === 'filled' || state === 'processed'))
  return { lines, differences: lines.filter((line) => line.difference !== 0), unsettled }
}

const sum = (tallies: readonly JarTally[]) => tallies.reduce((total, tally) => total + tally.jars, 0)

const ASIDE = new Set(['unsealed', 'opened', 'discarded'])
const SETTLED_SEALED = new Set(['sealed', 'shared-out', 'opened', 'held', 'recalled'])

function countSize(tallies: readonly JarTally[], { brought, bought, returned, brokenEmpty }: EmptyCount): DayCount {
  const count = (is: (tally: JarTally) => boolean) => sum(tallies.filter(is))
  const isColdAside = ({ seal, state, isCold }: JarTally) => seal === null && isCold === true && (state === 'held' || state === 'recalled')
  const isUnsealed = (tally: JarTally) => tally.seal === 'unsealed' || (tally.seal === null && ASIDE.has(tally.state)) || isColdAside(tally)
  const isAgain = (tally: JarTally) => tally.seal === 'unsealed' && SETTLED_SEALED.has(tally.state) && tally.state !== 'opened'
  const kept = (tally: JarTally) => tally.seal === 'sealed' || isAgain(tally)
  return {
    ...NOTHING_COUNTED,
    brought,
    bought,
    returnedEmpty: returned,
    brokenEmpty,
    filled: sum(tallies),
    brokenFilled: count(({ seal, state }) => seal === null && state === 'broken'),
    sealed: count(({ seal }) => seal === 'sealed'),
    unsealed: count(isUnsealed),
    reprocessed: count(isAgain),
    refrigerated: count((tally) => isUnsealed(tally) && (tally.state === 'unsealed' || tally.state === 'opened' || isColdAside(tally))),
    discardedUnsealed: count((tally) => isUnsealed(tally) && (tally.state === 'discarded' || tally.state === 'broken')),
    sharedOut: count((tally) => kept(tally) && (tally.state === 'shared-out' || tally.state === 'opened')),
    held: count((tally) => kept(tally) && (tally.state === 'held' || tally.state === 'recalled')),
    discardedSealed: count(({ seal, state }) => seal === 'sealed' && (state === 'discarded' || state === 'broken' || state === 'unsealed')),
    inStore: count((tally) => kept(tally) && tally.state === 'sealed'),
  }
}

function countLids(tallies: readonly JarTally[], lids: LidCount): DayCount {
  const used = tallies.reduce((total, tally) => total + tally.lidsUsed, 0)
  return {
    ...NOTHING_COUNTED,
    lidsBought: lids.lidsAtStart,
    lidsUsed: used,
    lidsSpoiled: lids.lidsSpoiled,
    lidsLeft: lids.lidsLeft,
    bandsBrought: lids.bandsAtStart,
    bandsReturned: lids.bandsReturned,
    bandsDiscarded: lids.bandsDiscarded,
    bandsOnJars: lids.bandsOnJars,
  }
}
