import { expect, it } from 'vitest'
import { householdAllergens } from '@/shared/people/household-allergens'

it('joins the list of the household and those of its people, each word once', () => {
  const people = [{ allergies: ['mustard'] }, { allergies: [] }, { allergies: ['celery', 'egg', 'mustard'] }]
  expect(householdAllergens(['egg'], people)).toEqual(['egg', 'mustard', 'celery'])
  expect(householdAllergens([], [])).toEqual([])
})
