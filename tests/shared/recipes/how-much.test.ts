import { describe, expect, it } from 'vitest'
import { RecipeYield } from '@/shared/forms/recipe-yield'
import { askBoilDown, isBoiledDown } from '@/shared/recipes/boil-down-question'
import { type HowMuchProblem, howMuch, produceUnits, PROMISE_CHANCE, type YieldQuestion } from '@/shared/recipes/how-much'
import { USUAL_LOSSES } from '@/shared/recipes/predict-yield'
import type { Recipe } from '@/shared/recipes/recipe'
import { RECIPES, recipeById } from '@/shared/recipes/recipe-library'
import { sayBoilDownProblem, sayFieldUnits, sayHowMuchProblem, sayJarsOf, sayProduceUnit } from '@/shared/wording/say-yield'

const losses = USUAL_LOSSES

function recipe(id: string): Recipe {
  const found = recipeById(id)
  if (found === undefined) throw new Error(`No recipe ${id}`)
  return found
}

function answer(id: string, question: YieldQuestion) {
  const found = howMuch(recipe(id), question)
  if (!found.ok) throw new Error(JSON.stringify(found.problem))
  return found.value
}

const problem = (id: string, question: YieldQuestion): HowMuchProblem | 'none' => {
  const found = howMuch(recipe(id), question)
  return found.ok ? 'none' : found.problem
}

describe('how much a recipe makes of produce', () => {
  it('counts whole batches of a tested recipe, in any weight', () => {
    // 25 lb of tomatoes are three batches of salsa at 7 lb, and 4 lb are left over; three batches give 21 to 27 pints.
    for (const [amount, unit] of [
      [25, 'lb'],
      [11.34, 'kg'],
    ] as const) {
      const salsa = answer('salsa', { jar: 'pint', losses, amount, unit })
      expect(salsa).toMatchObject({ batches: 3, pounds: 21, wanted: null, source: { section: 'Tomato/Tomato Paste Salsa' } })
      expect(salsa.forecast.low).toBeGreaterThanOrEqual(21)
      expect(salsa.forecast.high).toBeLessThanOrEqual(27)
      expect(salsa.buy.find(({ item }) => item.includes('lemon'))).toMatchObject({ amount: 6, unit: 'us-cup' })
    }
  })

  it('takes culls out of what is weighed, and not out of what is prepared', () => {
    const weighed = { jar: 'pint', losses: { ...losses, culls: 0.2 }, amount: 35, unit: 'lb' } as const
    expect(answer('salsa', weighed)).toMatchObject({ batches: 4, pounds: 35 }) // 28 sound lb; 28 lb sound are 35 as delivered
    expect(answer('salsa', { ...weighed, amount: 3, unit: 'us-qt' }).batches).toBe(1)
  })

  it('tells US, imperial and metric cups apart', () => {
    // Plum jam takes 4.5 US cups of crushed plums: 1065 mL. Nine cups are 2129, 2557 and 2250 mL.
    const cups = (amount: number, unit: 'us-cup' | 'imp-cup' | 'metric-cup') =>
      howMuch(recipe('plum-jam'), { jar: 'half-pint', losses, amount, unit })
    expect(cups(9, 'us-cup')).toMatchObject({ ok: true, value: { batches: 2 } })
    expect(cups(7.5, 'imp-cup')).toMatchObject({ ok: true, value: { batches: 2 } })
    expect(cups(8.5, 'metric-cup')).toMatchObject({ ok: true, value: { batches: 1 } })
    expect(cups(8.6, 'metric-cup')).toMatchObject({ ok: true, value: { batches: 2 } })
    expect(cups(4, 'us-cup')).toEqual({ ok: false, problem: { kind: 'less-than-a-batch', needs: { amount: 4.5, unit: 'us-cup' } } })
  })

  it('takes the higher end of a measured range, so that no batch comes short', () => {
    expect(howMuch(recipe('jam-apricot'), { jar: 'half-pint', losses, amount: 4, unit: 'us-cup' })).toMatchObject({
      problem: { kind: 'less-than-a-batch', needs: { amount: 4.5 } },
    })
  })

  it('reckons plain packs by the printed weights: a bushel of 53 lb gives 15 to 21 quarts before seal loss', () => {
    const bushel = answer('tomato-halved', { jar: 'quart', losses: { culls: 0, unsealed: 0 }, amount: 1, unit: 'field' })
    expect(bushel).toMatchObject({ pounds: 53, batches: null, buy: [], fieldUnit: { pounds: 53 } })
    expect(bushel.forecast.low).toBeGreaterThanOrEqual(15)
    expect(bushel.forecast.high).toBeLessThanOrEqual(21)
    expect(answer('tomato-halved', { jar: 'quart', losses: { culls: 0, unsealed: 0 }, amount: 53, unit: 'lb' }).forecast).toEqual(
      bushel.forecast,
    )
  })

  it('is refused in another jar, in a unit without a printed weight, for less than a batch and for more than a day', () => {
    expect(problem('salsa', { jar: 'quart', losses, amount: 25, unit: 'lb' })).toEqual({ kind: 'jar-not-in-recipe' })
    expect(problem('salsa', { jar: 'pint', losses, amount: 1, unit: 'field' })).toEqual({ kind: 'unit-not-printed' })
    expect(problem('tomato-halved', { jar: 'quart', losses, amount: 9, unit: 'us-cup' })).toEqual({ kind: 'unit-not-printed' })
    expect(problem('dill-pickle', { jar: 'pint', losses, amount: 9, unit: 'us-cup' })).toEqual({ kind: 'unit-not-printed' })
    expect(problem('jam-apricot', { jar: 'half-pint', losses, amount: 9, unit: 'lb' })).toEqual({ kind: 'unit-not-printed' })
    expect(problem('salsa', { jar: 'pint', losses, amount: 6.9, unit: 'lb' })).toMatchObject({ kind: 'less-than-a-batch' })
    expect(problem('salsa', { jar: 'pint', losses, amount: 427, unit: 'lb' })).toEqual({ kind: 'more-than-a-day' })
    expect(answer('salsa', { jar: 'pint', losses, amount: 426.9, unit: 'lb' }).batches).toBe(60)
  })
})

describe('what jars need', () => {
  it('is enough batches to keep the promise on nine days of ten, and not one fewer', () => {
    const wanted = answer('salsa', { jar: 'pint', losses, jars: 72 })
    expect(wanted.wanted?.chance).toBeGreaterThanOrEqual(PROMISE_CHANCE)
    expect(wanted.pounds).toBe(Number(wanted.batches) * 7)
    const fewer = answer('salsa', { jar: 'pint', losses, amount: (Number(wanted.batches) - 1) * 7, unit: 'lb' })
    expect(fewer.forecast.low).toBeLessThan(72)
    expect(wanted.buy[0]).toMatchObject({ amount: 3 * Number(wanted.batches), unit: 'us-qt' })
  })

  it('is enough produce of a plain pack, in whole pounds, and more of it where some is sorted out', () => {
    const sound = answer('tomato-halved', { jar: 'quart', losses, jars: 42 })
    expect(sound.wanted).toMatchObject({ jars: 42 })
    expect(sound.wanted?.chance).toBeGreaterThanOrEqual(PROMISE_CHANCE)
    const culled = answer('tomato-halved', { jar: 'quart', losses: { ...losses, culls: 0.1 }, jars: 42 })
    expect(Number(culled.pounds)).toBeGreaterThan(Number(sound.pounds))
  })

  it('is refused where 60 batches are not enough, and where all jars fail', () => {
    expect(problem('salsa', { jar: 'pint', losses, jars: 2000 })).toEqual({ kind: 'more-than-a-day' })
    expect(problem('salsa', { jar: 'pint', losses: { culls: 0, unsealed: 1 }, jars: 1 })).toEqual({ kind: 'more-than-a-day' })
    expect(problem('salsa', { jar: 'pint', losses: { culls: 0, unsealed: 1 }, amount: 7, unit: 'lb' })).toEqual({ kind: 'more-than-a-day' })
    expect(problem('tomato-halved', { jar: 'quart', losses: { culls: 0, unsealed: 1 }, jars: 1 })).toEqual({ kind: 'unit-not-printed' })
    expect(problem('tomato-halved', { jar: 'quart', losses: { culls: 0, unsealed: 1 }, amount: 7, unit: 'lb' })).toEqual({
      kind: 'unit-not-printed',
    })
  })

  it('names no weight where the recipe names none', () => {
    expect(answer('jam-apricot', { jar: 'half-pint', losses, jars: 5 })).toMatchObject({ pounds: null, fieldUnit: null })
  })
})

describe('the units of a recipe', () => {
  it('are those that its publication leads from', () => {
    expect(produceUnits(recipe('tomato-halved'))).toEqual(['lb', 'kg', 'field'])
    expect(produceUnits(recipe('salsa'))).toEqual(['lb', 'kg', 'us-cup', 'imp-cup', 'metric-cup', 'us-qt', 'imp-qt', 'L'])
    expect(produceUnits(recipe('jam-apricot'))).toEqual(['us-cup', 'imp-cup', 'metric-cup', 'us-qt', 'imp-qt', 'L'])
    expect(produceUnits(recipe('dill-pickle'))).toEqual(['lb', 'kg'])
  })

  it.each(RECIPES)('of $id all lead to an answer or a named reason', (each) => {
    for (const unit of produceUnits(each)) {
      const found = howMuch(each, { jar: each.defaultJar, losses, amount: 40, unit })
      if (found.ok) expect(found.value.forecast.inputs.length).toBeGreaterThan(1)
      else expect(['less-than-a-batch', 'more-than-a-day', 'unit-not-printed']).toContain(found.problem.kind)
      if (!found.ok && found.problem.kind === 'unit-not-printed') expect(each.jars, each.id).toEqual([])
    }
    const wanted = howMuch(each, { jar: each.defaultJar, losses, jars: 12 })
    expect(wanted).toMatchObject({ ok: true, value: { wanted: { jars: 12 } } })
  })
})

describe('a boil-down', () => {
  const asked = { juice: 4, juiceUnit: 'L', fruit: 'plum', sugar: 1.25, sugarUnit: 'kg' } as const
  const jelly = recipe('jam-apricot')

  it('of 4 L of juice and water with 1.25 kg of sugar leaves about 2 L and nine half-pints, as the trade checks it', () => {
    // 3 L of plum juice at 12.3 to 16.3 Brix and 1 L of water: 9.2 to 12.2 Brix. At 10.7, 4.171 kg hold 0.447 kg; with the sugar 1.697 kg,
    // which are 2.611 kg at 65 % and 1.98 L; 1.90 and 2.05 L at the ends.
    const found = askBoilDown({ ...asked, juice: 3, water: 1 }, ['pint', 'half-pint'])
    if (!found?.ok) return expect.unreachable()
    expect(found.value).toMatchObject({ juiceLitres: 3, waterLitres: 1 })
    const { litres, finishBrix } = found.value.yield
    expect(finishBrix).toBe(65)
    expect([litres.low, litres.typical, litres.high].map((each) => Math.round(each * 100) / 100)).toEqual([1.9, 1.98, 2.05])
    expect(found.value.jars).toEqual([
      { jar: 'half-pint', low: 9, high: 9, sterilise: 11 },
      { jar: 'pint', low: 5, high: 5, sterilise: 6 },
    ])
  })

  it('takes any volume, and pounds of sugar', () => {
    const cups = askBoilDown({ ...asked, juice: 16, juiceUnit: 'metric-cup', sugar: 2.75578, sugarUnit: 'lb' }, jelly.jars)
    const litres = askBoilDown(asked, jelly.jars)
    if (!cups?.ok || !litres?.ok) return expect.unreachable()
    expect(cups.value.yield.litres.typical).toBeCloseTo(litres.value.yield.litres.typical, 4)
  })

  it('waits until all of it is said, and is refused where there is nothing to boil down', () => {
    for (const name of ['juice', 'juiceUnit', 'fruit', 'sugar', 'sugarUnit'] as const)
      expect(askBoilDown({ ...asked, [name]: undefined }, jelly.jars)).toBeNull()
    const sweet = askBoilDown({ ...asked, sugar: 9 }, jelly.jars)
    expect(sweet).toMatchObject({ ok: false, problem: { kind: 'already-past-finish' } })
    if (sweet && !sweet.ok) expect(sayBoilDownProblem(sweet.problem).why).toMatch(/begins at \d+ degrees Brix, at or past the finish of 65/)
    expect(sayBoilDownProblem({ kind: 'not-positive' }).instead).toMatch(/how much juice/)
  })

  it('is for preserves without added pectin alone', () => {
    expect(
      RECIPES.filter(isBoiledDown).every(({ kettleUse, process }) => kettleUse === 'jam' && process?.foodId !== 'jam-jelly-added-pectin'),
    ).toBe(true)
    expect([
      isBoiledDown(jelly),
      isBoiledDown(recipe('plum-jam')),
      isBoiledDown(recipe('salsa')),
      isBoiledDown({ kettleUse: 'jam', process: null }),
    ]).toEqual([true, false, false, false])
  })
})

describe('the words of a yield', () => {
  it('tell three cups apart, and quarts', () => {
    expect((['us-cup', 'imp-cup', 'metric-cup', 'us-qt', 'imp-qt', 'lb', 'kg', 'L'] as const).map((unit) => sayProduceUnit(unit))).toEqual([
      'US cups (237 mL)',
      'imperial cups (284 mL)',
      'metric cups (250 mL)',
      'US quarts (946 mL)',
      'imperial quarts (1.14 L)',
      'pounds',
      'kilograms',
      'litres',
    ])
    expect(sayProduceUnit('field', answer('tomato-halved', { jar: 'quart', losses, jars: 7 }).fieldUnit)).toBe('bushels of 53 lb')
    expect(sayProduceUnit('field', null)).toBe('field units')
  })

  it('say jars and bushels by their count', () => {
    const one = answer('tomato-halved', { jar: 'quart', losses, amount: 53, unit: 'lb' })
    expect(sayFieldUnits(one)).toBe('1 bushel of 53 lb')
    expect(sayFieldUnits({ ...one, pounds: 54 })).toBe('2 bushels of 53 lb')
    expect(sayFieldUnits({ ...one, pounds: null })).toBe('')
    expect(sayFieldUnits({ ...one, fieldUnit: null })).toBe('')
    expect(sayJarsOf({ ...one, forecast: { ...one.forecast, low: 1, high: 1 } })).toBe('1 quart')
    expect(sayJarsOf({ ...one, forecast: { ...one.forecast, low: 14, high: 20 } })).toBe('14 to 20 quarts')
  })

  it('say every refusal in three parts', () => {
    const all: HowMuchProblem[] = [
      { kind: 'jar-not-in-recipe' },
      { kind: 'unit-not-printed' },
      { kind: 'less-than-a-batch', needs: { amount: 4.5, unit: 'us-cup' } },
      { kind: 'more-than-a-day' },
    ]
    for (const each of all) expect(Object.values(sayHowMuchProblem(each, jelly())).every((part) => part.length > 10)).toBe(true)
    expect(sayHowMuchProblem({ kind: 'jar-not-in-recipe' }, jelly()).why).toBe('The recipe names half-pints and pints.')
    expect(sayHowMuchProblem({ kind: 'less-than-a-batch', needs: { amount: 4.5, unit: 'us-cup' } }, jelly()).why).toMatch(
      /takes 4½ cups \(1.06 L\)/,
    )
  })
})

const jelly = () => recipe('jam-apricot')

describe('the question', () => {
  const read = (typed: Record<string, unknown>) => RecipeYield.safeParse(typed)

  it('takes what its forms send', () => {
    expect(read({ amount: '1,250.5', unit: 'lb', jar: 'pint', culls: '0', unsealed: '2' })).toMatchObject({
      data: { amount: 1250.5, culls: 0 },
    })
    expect(read({ jars: '48', jar: 'pint' })).toMatchObject({ data: { jars: 48 } })
    expect(read({ juice: '4', water: '', juiceUnit: 'L', fruit: 'red currant', sugar: '1.25', sugarUnit: 'kg' })).toMatchObject({
      success: true,
      data: { water: undefined },
    })
    expect(read({})).toMatchObject({ success: true })
  })

  it.each([
    { amount: '0' },
    { amount: '-1' },
    { amount: '1e9' },
    { amount: '100001' },
    { amount: 'NaN' },
    { amount: ['1', '2'] },
    { jars: '1.5' },
    { jars: '0' },
    { jars: '2001' },
    { unit: 'cup' },
    { jar: 'bottle' },
    { culls: '91' },
    { unsealed: '-2' },
    { juice: '0' },
    { fruit: 'constructor' },
    { sugarUnit: 'us-cup' },
    { other: '1' },
  ])('refuses %j', (typed) => {
    expect(read(typed).success).toBe(false)
  })
})
