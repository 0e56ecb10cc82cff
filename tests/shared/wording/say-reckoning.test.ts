import { expect, it } from 'vitest'
import { sayReckonProblem } from '@/shared/wording/say-reckoning'

it('says why a day is not reckoned, and what would do it', () => {
  expect(sayReckonProblem({ kind: 'pool-without-jars', poolId: 'jam', total: 6000 }, 'USD')).toBe(
    'No jar is shared out yet that carries $60.00 (jam). Share the jars out first.',
  )
  const product = { id: 'p1', recipeId: 'plum-jam', letter: 'J', title: 'Plum jam with liquid pectin' }
  expect(sayReckonProblem({ kind: 'pool-without-jars', poolId: 'plum-jam', total: 0 }, 'USD', [product])).toContain('$0.00 (plum jam).')
  const others = [
    sayReckonProblem({ kind: 'other-currency', item: 'sugar', currency: 'EUR', expected: 'USD' }, 'USD'),
    sayReckonProblem({ kind: 'amount-out-of-range', item: 'sugar', amount: -1 }, 'USD'),
    sayReckonProblem({ kind: 'jars-not-whole', product: 'jam', jars: 0.5 }, 'USD'),
    sayReckonProblem({ kind: 'unknown-party', item: 'sugar', partyId: 'x' }, 'USD'),
    sayReckonProblem({ kind: 'unknown-pool', item: 'sugar', poolId: 'x' }, 'USD'),
    sayReckonProblem({ kind: 'surcharge-without-fund', householdName: 'Ash' }, 'USD'),
  ]
  expect(new Set(others).size).toBe(6)
})
