import { produceKey } from '@/shared/day/produce-amount'
import { ingredientKey } from '@/shared/supplies/ingredient-words'
import { convert } from '@/shared/units/convert'
import { readUnit } from '@/shared/units/read-unit'

/** A quantity of something of one household, as it was typed. */
interface Gift {
  readonly householdId: string | null
  readonly item: string
  readonly quantity: number
  readonly unit: string
}

/** Produce that a household promised for a credit. */
export interface PromisedGift extends Gift {
  readonly id: string
  readonly householdId: string
}

/**
 * How much of each promised gift is credited, in the unit of its promise: what was weighed in. Before the kettles are done, what has not come yet counts as
 * promised; afterwards it counts nothing, so that nobody is paid for what never came.
 *
 * Of two promises of one household and crop the first is filled first, and the last takes what came beyond both. Where the units say nothing of each other
 * (a crate for pounds) the promise stands.
 *
 * @param came - all that was weighed in, culls included
 */
export function creditedQuantities(gifts: readonly PromisedGift[], came: readonly Gift[], isOver: boolean): Map<string, number> {
  const left = came.map(({ quantity }) => quantity)
  const isLast = (gift: PromisedGift, index: number) => !gifts.slice(index + 1).some((later) => isSameGift(gift, later))
  return new Map(
    gifts.map((gift, index) => {
      const lots = came.flatMap((lot, at) => (isSameGift(gift, lot) ? [{ at, perUnit: unitsOf(lot.unit, gift.unit) }] : []))
      if (lots.some(({ perUnit }) => perUnit === null) || (lots.length === 0 && !isOver)) return [gift.id, gift.quantity]
      let credited = 0
      for (const { at, perUnit } of lots) {
        const there = (left[at] ?? 0) * (perUnit ?? 0)
        const taken = isLast(gift, index) ? there : Math.min(there, gift.quantity - credited)
        left[at] = perUnit ? (there - taken) / perUnit : 0
        credited += taken
      }
      return [gift.id, Math.round(credited * 1000) / 1000]
    }),
  )
}

/** How many of the second unit are in one of the first; null where that says nothing. */
function unitsOf(from: string, to: string): number | null {
  if (from.trim().toLowerCase() === to.trim().toLowerCase()) return 1
  const [one, other] = [readUnit(from), readUnit(to)]
  const converted = one && other && convert(1, one, other)
  return converted?.ok ? converted.value : null
}

function isSameGift(gift: Gift, other: Gift): boolean {
  if (gift.householdId !== other.householdId) return false
  const crop = produceKey(gift.item)
  return ingredientKey(gift.item) === ingredientKey(other.item) || (crop !== null && crop === produceKey(other.item))
}
