/** Jars that a household is to get of one product. */
export interface Portion {
  readonly householdId: string
  readonly jars: number
}

/**
 * Which jars go to whom: the households in their order take the next jars in theirs, so the same table gives the same jars on every machine.
 *
 * Whoever wishes for its own glass takes that first; the others then choose among what is left. What a household gets in number is never changed by it.
 *
 * @param jars - ids in the order of their short names; at least as many as the portions need
 * @param ownGlass - jars whose owner wishes for them, with that household
 * @throws RangeError when there are too few: a share is never more than what sealed
 */
export function pickJars(
  jars: readonly string[],
  portions: readonly Portion[],
  ownGlass: ReadonlyMap<string, string> = new Map(),
): Map<string, readonly string[]> {
  const wanted = portions.reduce((sum, portion) => sum + portion.jars, 0)
  if (wanted > jars.length) throw new RangeError(`${wanted} jars are to be given and ${jars.length} are sealed`)
  const own = new Map(
    portions.map(({ householdId, jars: count }) => [householdId, jars.filter((jar) => ownGlass.get(jar) === householdId).slice(0, count)]),
  )
  const taken = new Set([...own.values()].flat())
  const rest = jars.filter((jar) => !taken.has(jar))
  let next = 0
  return new Map(
    portions.map(({ householdId, jars: count }) => {
      const first = own.get(householdId) ?? []
      const more = rest.slice(next, next + count - first.length)
      next += more.length
      return [householdId, [...first, ...more]]
    }),
  )
}
