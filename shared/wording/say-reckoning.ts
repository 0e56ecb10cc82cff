import { formatMoney } from '@/shared/reckoning/money'
import type { ReckonProblem } from '@/shared/reckoning/reckon-day'
import { type PooledProduct, sayPool } from '@/shared/share/pool-products'

/** Why a day is not reckoned yet, and what would do it. */
export function sayReckonProblem(problem: ReckonProblem, currency: string, products: readonly PooledProduct[] = []): string {
  switch (problem.kind) {
    case 'pool-without-jars':
      return `No jar is shared out yet that carries ${formatMoney(problem.total, currency)} (${sayPool(problem.poolId, products)}). Share the jars out first.`
    case 'other-currency':
      return `${problem.item} is in ${problem.currency}; this group reckons in ${problem.expected}.`
    case 'amount-out-of-range':
      return `The amount of ${problem.item} cannot be reckoned. Enter it again.`
    case 'jars-not-whole':
      return `The jars of ${problem.product} are not whole. Share them out again.`
    case 'unknown-party':
      return `${problem.item} stands for a household that is not in the group. Enter it again.`
    case 'unknown-pool':
      return `${problem.item} stands in the pool "${problem.poolId}", which carries nothing. Enter it again.`
    case 'surcharge-without-fund':
      return `${problem.householdName} pays a surcharge, and no fund takes it.`
    default:
      return problem satisfies never
  }
}
