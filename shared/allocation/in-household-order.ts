/** Whatever belongs to a household and stands in a table under its name. */
export interface OfHousehold {
  readonly householdId: string
  readonly householdName: string
}

/**
 * The order of every table and the tie rule of every sharing: by household name with case and accents aside, then by the exact name, then by id.
 *
 * Compared by code units, so that it is the same on every machine and in every browser.
 */
export function inHouseholdOrder<Item extends OfHousehold>(items: readonly Item[]): Item[] {
  const keyed = items.map((item) => ({ item, key: plainName(item.householdName) }))
  return keyed
    .sort(
      (a, b) =>
        compare(a.key, b.key) || compare(a.item.householdName, b.item.householdName) || compare(a.item.householdId, b.item.householdId),
    )
    .map(({ item }) => item)
}

const plainName = (name: string) => name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
