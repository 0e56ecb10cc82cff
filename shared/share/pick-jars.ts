/** Jars that a household is to get of one product. */
export interface Portion {
  readonly householdId: string
  readonly jars: number
}

/**
 * Which jars go to whom: the households in their order take the next jars in theirs, so the same table gives the same jars on every machine.
 *
 * @param jars - ids in the order of their short names; at least as many as the portions need
 * @throws RangeError when there are too few: a share is never more than what sealed
 */
export function pickJars(jars: readonly string[], portions: readonly Portion[]): Map<string, readonly string[]> {
  const wanted = portions.reduce((sum, portion) => sum + portion.jars, 0)
  if (wanted > jars.length) throw new RangeError(`${wanted} jars are to be given and ${jars.length} are sealed`)
  let next = 0
  return new Map(
    portions.map(({ householdId, jars: count }) => {
      const own = jars.slice(next, next + count)
      next += count
      return [householdId, own]
    }),
  )
}
