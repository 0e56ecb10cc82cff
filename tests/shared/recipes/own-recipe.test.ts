import { describe, expect, it } from 'vitest'
import { type BindingConditionId, bindingConditions, standingOfOwnRecipe } from '@/shared/recipes/own-recipe'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { aQuery } from '@/tests/support/process-queries'

function conditionsOf(food: string, changes = {}): BindingConditionId[] {
  const found = lookUpProcess(aQuery({ food, ...changes }))
  return found.ok ? bindingConditions(found.value).map(({ id }) => id) : []
}

describe("a group's own recipe", () => {
  it('must confirm the conditions of the process it borrows', () => {
    expect(conditionsOf('plums')).toEqual(['same-food', 'same-pack', 'same-jar', 'same-headspace', 'no-thickener'])
    expect(conditionsOf('tomato-vegetable-juice')).toEqual([
      'same-food',
      'same-pack',
      'same-jar',
      'same-headspace',
      'no-thickener',
      'acid-added',
      'proportions-kept',
      'pack-limits',
    ])
    expect(conditionsOf('soups', { method: 'pressure', gauge: 'dial' })).toContain('proportions-kept')
  })

  it('is bound when every one is confirmed', () => {
    const standing = standingOfOwnRecipe(aQuery(), new Set(conditionsOf('plums')))
    expect(standing).toMatchObject({ ok: true, value: { standing: 'bound', process: { minutes: 20 }, confirmed: conditionsOf('plums') } })
  })

  it('is fridge or freezer as long as one is not', () => {
    for (const left of conditionsOf('plums')) {
      const confirmed = new Set(conditionsOf('plums').filter((id) => id !== left))
      const standing = standingOfOwnRecipe(aQuery(), confirmed)
      expect(standing).toMatchObject({ ok: true, value: { standing: 'fridge-or-freezer', unconfirmed: [{ id: left }] } })
    }
  })

  it('has no standing where no process is published', () => {
    expect(standingOfOwnRecipe(aQuery({ food: 'sauerkraut' }), new Set())).toMatchObject({
      ok: false,
      problem: { code: 'no-verified-process' },
    })
  })
})
