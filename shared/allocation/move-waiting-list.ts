/** A wish that could not be met when it was made. */
export interface Waiting {
  readonly householdId: string
  readonly householdName: string
  /** Whole jars still wished for, 1 or more. */
  readonly jars: number
  /** Place in the list: the order in which wishes came in, each number once. */
  readonly place: number
  /** Whether fewer jars are better than none. */
  readonly takesFewer: boolean
}

/** What became of a waiting list when jars came free. */
export interface ListMove {
  readonly given: readonly { readonly householdId: string; readonly jars: number }[]
  /** Those who still wait, in their old order; who took fewer waits on for the rest in the same place. */
  readonly waiting: readonly Waiting[]
  readonly free: number
}

/**
 * Moves a waiting list when jars come free: first come, first served.
 *
 * A wish is met whole when it can be. One that cannot gets what there is if its household takes fewer; otherwise it is passed over, keeps its place, and
 * those behind are not made to wait for it.
 *
 * @param free - whole jars that came free, 0 or more
 */
export function moveWaitingList(free: number, list: readonly Waiting[]): ListMove {
  const given: { householdId: string; jars: number }[] = []
  const waiting: Waiting[] = []
  let left = free
  for (const wish of [...list].sort((a, b) => a.place - b.place)) {
    const jars = wish.jars <= left ? wish.jars : wish.takesFewer ? left : 0
    if (jars > 0) given.push({ householdId: wish.householdId, jars })
    if (jars < wish.jars) waiting.push({ ...wish, jars: wish.jars - jars })
    left -= jars
  }
  return { given, waiting, free: left }
}
