import { because, explain, raise, type Store } from '@/shared/scheduling/proof/store'

/** A literal and what it weighs where it holds. */
export type Weighed = { readonly side: number; readonly value: number; readonly weight: number }

/**
 * The weights of the literals that hold never sum to more than `most`, while `condition` holds if one is given.
 *
 * @param things - heaviest first
 */
export function weighsAtMost(
  things: readonly Weighed[],
  most: number,
  condition: readonly [side: number, value: number] | null,
): (store: Store) => boolean {
  return (store) => {
    const { bound } = store
    const isOn = condition === null || (bound[condition[0]] ?? 0) >= condition[1]
    if (!isOn && condition && (bound[condition[0] ^ 1] ?? 0) >= 1 - condition[1]) return true
    const sum = things.reduce((total, one) => ((bound[one.side] ?? 0) >= one.value ? total + one.weight : total), 0)
    const blame = (reason: number) => {
      for (const one of things) if ((bound[one.side] ?? 0) >= one.value) because(store, reason, one.side, one.value)
      if (isOn && condition) because(store, reason, condition[0], condition[1])
      return reason
    }
    if (!isOn && condition) return sum <= most || raise(store, condition[0] ^ 1, 1 - condition[1], blame(explain(store)))
    for (const one of things) {
      if (sum > most) return exclude(store, things.find((each) => (bound[each.side] ?? 0) >= each.value) ?? one, things, condition)
      if (sum + one.weight <= most) return true
      if ((bound[one.side] ?? 0) >= one.value || (bound[one.side ^ 1] ?? 0) >= 1 - one.value) continue
      if (!raise(store, one.side ^ 1, 1 - one.value, blame(explain(store)))) return false
    }
    return true
  }
}

/** Too much holds already: one of it is raised against itself, which notes the conflict. */
function exclude(store: Store, one: Weighed, things: readonly Weighed[], condition: readonly [number, number] | null): boolean {
  const reason = explain(store)
  for (const each of things) if (each !== one && (store.bound[each.side] ?? 0) >= each.value) because(store, reason, each.side, each.value)
  if (condition) because(store, reason, condition[0], condition[1])
  return raise(store, one.side ^ 1, 1 - one.value, reason)
}
