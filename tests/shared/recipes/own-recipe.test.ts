import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chooseProcess } from '@/shared/day/choose-process'
import { type BindingConditionId, bindingConditions, type ConfirmedCondition, standingOfOwnRecipe } from '@/shared/recipes/own-recipe'
import { conditionsToConfirm, standingOfJars } from '@/shared/recipes/conditions-to-confirm'
import { droppedConditions, type OwnRecipe, recipeOfOwn } from '@/shared/recipes/own-recipe-content'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'
import { aBoundRecipe, allConfirmed, anOwnRecipe } from '@/tests/support/own-recipes'
import { aQuery } from '@/tests/support/process-queries'

function conditionsOf(food: string, changes = {}): BindingConditionId[] {
  const found = lookUpProcess(aQuery({ food, ...changes }))
  return found.ok ? bindingConditions(found.value).map(({ id }) => id) : []
}

function confirmedOf(food: string, ids?: readonly BindingConditionId[]): ConfirmedCondition[] {
  const found = lookUpProcess(aQuery({ food }))
  if (!found.ok) return []
  const { edition } = found.value
  return bindingConditions(found.value).flatMap((each) => (!ids || ids.includes(each.id) ? [{ ...each, edition }] : []))
}

const putUp = (own: OwnRecipe, elevationFeet: number, jarSize: OwnRecipe['content']['yields'][number]['jar'] = 'pint') =>
  chooseProcess({
    recipe: recipeOfOwn(own),
    jarSize,
    method: own.binding?.method ?? 'boiling-water',
    gauge: own.binding?.gauge ?? null,
    jarTreatment: 'boiled-in-pot',
    elevationFeet,
  })

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

  it('reads them with both units and in plain words', () => {
    const statements = confirmedOf('plums').map(({ statement }) => statement)
    expect(statements).toContain('Headspace is ½ in (13 mm).')
    expect(statements).toContain('The jars are pints or smaller.')
  })

  it('reads how much acid goes into each jar, and all of it into a smaller one', () => {
    const acidIn = (changes: Parameters<typeof aQuery>[0]) => {
      const found = lookUpProcess(aQuery(changes))
      return found.ok && bindingConditions(found.value).find(({ id }) => id === 'acid-added')?.statement
    }
    expect(acidIn({ food: 'figs', jar: 'quart' })).toBe(
      'Into each quart: 2 tbsp (30 mL) bottled lemon juice, or ½ tsp (2.5 mL) citric acid. Either one.',
    )
    expect(acidIn({ food: 'tomatoes-crushed', jar: 'half-pint' })).toMatch(
      /^Into each half-pint, not less than printed for a pint: 1 tbsp \(15 mL\) bottled lemon juice, or ¼ tsp .* or 2 tbsp \(30 mL\) vinegar/,
    )
    expect(acidIn({ food: 'piccalilli' })).toMatch(/^Acid: Acid comes from the tested recipe/)
  })

  it('says where the printed headspace depends on the food', () => {
    const found = lookUpProcess(aQuery({ food: 'lima-beans', pack: 'raw', jar: 'quart', method: 'pressure', gauge: 'dial' }))
    const said = found.ok && bindingConditions(found.value).find(({ id }) => id === 'same-headspace')?.statement
    expect(said).toBe('Headspace is 1½ in (38 mm). 1 1/2 in. for small beans, 1 1/4 in. for large beans.')
  })

  it('is bound when every one is confirmed', () => {
    const standing = standingOfOwnRecipe(aQuery(), confirmedOf('plums'))
    expect(standing).toMatchObject({ ok: true, value: { standing: 'bound', process: { minutes: 20 }, confirmed: conditionsOf('plums') } })
  })

  it('is fridge or freezer as long as one is not', () => {
    for (const left of conditionsOf('plums')) {
      const confirmed = confirmedOf('plums').filter(({ id }) => id !== left)
      const standing = standingOfOwnRecipe(aQuery(), confirmed)
      expect(standing).toMatchObject({ ok: true, value: { standing: 'fridge-or-freezer', unconfirmed: [{ id: left }] } })
    }
  })

  it('was not confirmed in other words, nor of another edition', () => {
    for (const change of [{ statement: 'It is quite like plums.' }, { edition: 'another year' }]) {
      const confirmed = confirmedOf('plums').map((each) => (each.id === 'same-food' ? { ...each, ...change } : each))
      expect(standingOfOwnRecipe(aQuery(), confirmed)).toMatchObject({ value: { unconfirmed: [{ id: 'same-food' }] } })
    }
  })

  it('has no standing where no process is published', () => {
    expect(standingOfOwnRecipe(aQuery({ food: 'sauerkraut' }), [])).toMatchObject({
      ok: false,
      problem: { code: 'no-verified-process' },
    })
  })
})

describe('a recipe put on a day', () => {
  it('gets exactly the published minutes once everything is confirmed', () => {
    const own = aBoundRecipe()
    for (const feet of [650, 2000, 4300, 7000]) {
      const published = lookUpProcess(aQuery({ food: 'plums', pack: 'hot', jar: 'pint', elevation: { feet } }))
      const put = putUp({ ...own, confirmed: allConfirmed(own, feet) }, feet)
      expect(put.ok && published.ok && [put.value.minutes, put.value.published.rowKey]).toEqual(
        published.ok && [published.value.minutes, published.value.rowKey],
      )
    }
  })

  it('gets none without a process, and says fridge or freezer', () => {
    const put = putUp(aBoundRecipe({ binding: null }), 650)
    expect(put).toEqual({ ok: false, problem: { kind: 'no-process-held' } })
  })

  it('names what is open', () => {
    const own = aBoundRecipe()
    const put = putUp({ ...own, confirmed: allConfirmed(own, 650).slice(1) }, 650)
    expect(put).toMatchObject({ ok: false, problem: { kind: 'conditions-open', statements: [expect.stringContaining('The food is')] } })
    if (put.ok) throw new Error('it went through')
    expect(sayProcessChoice('Halved plums', put.problem)).toMatchObject({
      what: 'Halved plums: fridge or freezer.',
      why: expect.stringContaining('nobody has confirmed: The food is'),
    })
  })

  it('asks for the conditions of each of its jars', () => {
    const own = aBoundRecipe({
      content: anOwnRecipe({
        yields: [
          { jar: 'pint', low: 7, typical: 8, high: 9 },
          { jar: 'quart', low: 3, typical: 4, high: 4 },
        ],
      }),
    })
    const ids = conditionsToConfirm(own, [650]).map(({ statement }) => statement)
    expect(ids.filter((statement) => statement.startsWith('The jars are'))).toEqual([
      'The jars are pints or smaller.',
      'The jars are quarts or smaller.',
    ])
    const forPints = allConfirmed(own, 650).filter(({ statement }) => !statement.includes('quart'))
    expect(standingOfJars({ ...own, confirmed: forPints }, 650)).toMatchObject([
      { jar: 'pint', standing: 'bound' },
      { jar: 'quart', standing: 'fridge-or-freezer', open: 1 },
    ])
  })

  it('gets no minutes with anything less than all conditions, whatever the table, jar and elevation', () => {
    const borrowed = fc.record({
      row: fc.constantFrom(...PUBLISHED_ROWS),
      pack: fc.constantFrom('hot' as const, 'raw' as const),
      jar: fc.constantFrom(...JAR_SIZES),
      feet: fc.constantFrom(0, 650, 1000, 1001, 2500, 4300, 6000, 6001, 8000, 9500),
      left: fc.nat(),
    })
    let bound = 0
    fc.assert(
      fc.property(borrowed, ({ row, pack, jar, feet, left }) => {
        const own = aBoundRecipe({
          content: anOwnRecipe({ pack, yields: [{ jar, low: 1, typical: 2, high: 3 }] }),
          binding: { foodId: row.foodId, pack, method: row.method, gauge: row.gauge },
        })
        const all = allConfirmed(own, feet)
        const published = lookUpProcess(aQuery({ food: row.foodId, pack, jar, method: row.method, gauge: row.gauge, elevation: { feet } }))
        const whole = putUp({ ...own, confirmed: all }, feet, jar)
        expect(whole.ok).toBe(published.ok)
        expect(putUp({ ...own, binding: null, confirmed: all }, feet, jar).ok).toBe(false)
        if (!whole.ok || !published.ok) return
        bound += 1
        expect(whole.value.minutes).toBe(published.value.minutes)
        const without = all.filter((_, index) => index !== left % all.length)
        const standing = standingOfJars({ ...own, confirmed: without }, feet)
        expect(putUp({ ...own, confirmed: without }, feet, jar).ok).toBe(false)
        expect(standing).toMatchObject([{ standing: 'fridge-or-freezer', open: 1 }])
      }),
      { numRuns: 600 },
    )
    expect(bound).toBeGreaterThan(100)
  })
})

describe('a change of the recipe', () => {
  const before = anOwnRecipe()
  const dropped = (changes: Parameters<typeof anOwnRecipe>[0]) => [...droppedConditions(before, anOwnRecipe(changes))].sort()
  const GOES_IN = ['acid-added', 'no-thickener', 'pack-limits', 'proportions-kept', 'same-food']

  it.each([
    ['the title', { title: 'Plums, halved' }, []],
    ['the times', { prepMinutes: 90, kettleMinutes: 10, fillMinutes: 3, stages: [] }, []],
    ['how many jars it gives', { yields: [{ jar: 'pint' as const, low: 5, typical: 6, high: 7 }] }, []],
    ['a quantity', { ingredients: [{ item: 'plums', amount: 8, unit: 'lb' as const }, before.ingredients[1] as never] }, GOES_IN],
    ['a unit', { ingredients: [{ item: 'plums', amount: 9, unit: 'kg' as const }, before.ingredients[1] as never] }, GOES_IN],
    ['an ingredient more', { ingredients: [...before.ingredients, { item: 'starch', amount: 1, unit: 'us-tbsp' as const }] }, GOES_IN],
    ['an ingredient less', { ingredients: before.ingredients.slice(0, 1) }, GOES_IN],
    ['the pack', { pack: 'raw' as const }, ['pack-limits', 'same-food', 'same-headspace', 'same-pack']],
    ['what is cooked', { prepBefore: 'fill' as const }, ['pack-limits', 'same-food', 'same-headspace', 'same-pack']],
    ['the jar', { yields: [{ jar: 'quart' as const, low: 3, typical: 4, high: 4 }] }, ['pack-limits', 'same-headspace', 'same-jar']],
  ])('%s drops what rests on it', (_, changes, expected) => {
    expect(dropped(changes)).toEqual(expected)
  })
})

describe('the shape of every other recipe', () => {
  it('keeps the figures that the group counted, jar by jar', () => {
    const recipe = recipeOfOwn(
      aBoundRecipe({
        content: anOwnRecipe({
          yields: [
            { jar: 'pint', low: 7, typical: 8, high: 9 },
            { jar: 'quart', low: 2, typical: 3, high: 3 },
          ],
        }),
      }),
    )
    expect([yieldInJars(recipe, 'pint').typical, yieldInJars(recipe, 'quart').typical]).toEqual([8, 3])
    expect(recipe).toMatchObject({ productLetter: 'H', defaultJar: 'pint', prepMinutes: { typical: 40, basis: 'common practice' } })
    expect(recipe.batchLitres).toBeGreaterThan(4)
  })
})
