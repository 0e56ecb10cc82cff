import { productName } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { PartLoad } from '@/shared/planning/part-loads'

/** "Plum jam: 6 loads of 8 half-pints where 12 have room. One more batch would not fit, and a tested batch is not cut up or made larger." */
export function sayPartLoad(problem: DayProblem, { preparationId, loads, jars, places, why }: PartLoad): string {
  const preparation = problem.preparations.find(({ id }) => id === preparationId)
  const name = preparation ? productName(preparation.title) : 'A product'
  const size = preparation ? jarName(preparation.jarSize, jars) : 'jars'
  return `${name}: ${loads === 1 ? 'one load' : `${loads} loads`} of ${jars} ${size} where ${places} have room. ${reason(why, preparation?.scaling)}`
}

function reason(why: PartLoad['why'], scaling: 'whole-batches-only' | 'to-kettle-volume' | undefined): string {
  if (why === 'rest') return 'No more of it is wanted.'
  if (why === 'apart') return 'Another batch would fit, but is filled at another time, and filled jars may not wait for it.'
  return scaling === 'whole-batches-only'
    ? 'One more batch would not fit, and a tested batch is neither cut up nor made larger.'
    : 'One more kettle batch would not fit.'
}
