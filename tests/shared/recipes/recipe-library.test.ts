import { describe, expect, it } from 'vitest'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { assignProductLetters } from '@/shared/recipes/assign-product-letters'
import type { Recipe } from '@/shared/recipes/recipe'
import { RECIPES, recipeById } from '@/shared/recipes/recipe-library'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'

const get = (id: string): Recipe => {
  const recipe = recipeById(id)
  if (recipe === undefined) throw new Error(`No recipe ${id}`)
  return recipe
}

describe('the recipe library', () => {
  it('names each recipe once', () => {
    const names = RECIPES.flatMap(({ id, alsoKnownAs }) => [id, ...alsoKnownAs])
    expect(new Set(names).size).toBe(names.length)
    expect(recipeById('stone-soup')).toBeUndefined()
  })

  // the recipes of the three practice days, by the ids used there: food, pack, default jar, letter
  it.each([
    ['plum_jam', 'jam-jelly-added-pectin', 'hot', 'half-pint', 'J'],
    ['dill_pickle', 'dill-pickles-fresh-pack', 'raw', 'pint', 'D'],
    ['tomato_halved', 'tomatoes-whole-water', 'hot', 'quart', 'T'],
    ['peach', 'peaches', 'hot', 'quart', 'P'],
    ['green_bean', 'green-beans', 'raw', 'pint', 'G'],
    ['applesauce', 'applesauce', 'hot', 'quart', 'A'],
    ['bread_butter', 'bread-and-butter-pickles', 'hot', 'pint', 'B'],
    ['corn', 'corn-whole-kernel', 'hot', 'pint', 'C'],
  ])('binds %s to %s, %s pack', (id, foodId, pack, jar, letter) => {
    expect(get(id)).toMatchObject({ process: { foodId, pack }, defaultJar: jar, productLetter: letter })
  })

  it('binds the tomato and tomato-paste salsa to its own row, not to that of chile salsa, and says what may be changed', () => {
    expect(get('salsa')).toMatchObject({
      process: { foodId: 'tomato-paste-salsa', pack: 'hot', method: 'boiling-water' },
      defaultJar: 'pint',
      productLetter: 'S',
      source: { section: 'Tomato/Tomato Paste Salsa' },
    })
    expect(get('chile-salsa').process).toMatchObject({ foodId: 'chile-salsa' })
    expect(get('salsa').notes.join(' ')).toMatch(/only safe change .* spices and herbs.*Never swap the juice for vinegar/)
  })

  it.each(RECIPES)('$id: every jar it allows has a process at sea level, or it says fridge or freezer', (recipe) => {
    if (recipe.process === null) {
      expect(recipe.notes.join(' ')).toMatch(/No verified process is held/)
      return
    }
    const { foodId, pack, method } = recipe.process
    const gauge = method === 'pressure' ? 'dial' : null
    for (const jar of recipe.jars) expect(lookUpProcess({ food: foodId, pack, jar, method, gauge, elevation: { feet: 0 } }).ok).toBe(true)
    expect(recipe.jars).toContain(recipe.defaultJar)
    expect(recipe.jars).toContain(recipe.batch.jar)
  })

  it.each(RECIPES)('$id: has a source, ordered ranges, and fits a kettle', (recipe) => {
    const { low, typical, high } = recipe.batch.yield
    expect([low, typical, high]).toEqual([low, typical, high].toSorted((a, b) => a - b))
    expect(recipe.source.publication && recipe.source.section).toBeTruthy()
    expect(recipe.batchLitres).toBeGreaterThan(0)
    for (const minutes of [recipe.prepMinutes, recipe.kettleMinutes, recipe.fillMinutes]) {
      if (minutes !== null) expect(minutes.low <= minutes.typical && minutes.typical <= minutes.high).toBe(true)
    }
  })

  it('repeats jam, pickles and sauces in whole batches and fills the kettle with plain packs', () => {
    const whole = RECIPES.filter(({ scaling }) => scaling === 'whole-batches-only').map(({ id }) => id)
    expect(whole).toHaveLength(29)
    expect(RECIPES.filter(({ kettleUse }) => kettleUse === 'jam').every(({ notes }) => notes.join(' ').includes('never doubled'))).toBe(
      true,
    )
  })

  // active labour of the practice days: 55, 50, 60 and 95 minutes a batch, jars and labels included
  it('leaves 15 minutes a batch of half-pints, 17 of pints, for washing jars and labels', () => {
    const labour = ({ prepMinutes, kettleMinutes, fillMinutes }: Recipe) =>
      (prepMinutes?.typical ?? 0) + (kettleMinutes?.typical ?? 0) + fillMinutes.typical
    expect(labour(get('plum-jam'))).toBe(55 - 15)
    expect(labour(get('dill-pickle'))).toBe(50 - 17)
    expect(labour(get('bread-and-butter-pickles'))).toBe(60 - 17)
    expect(labour(get('salsa'))).toBe(95 - 17)
  })

  it('measures the kettle by what goes into it', () => {
    expect(get('plum-jam').batchLitres).toBe(2.9) // 4.5 + 7.5 cups are 2.84 L
    expect(get('jelly-apple').batchLitres).toBe(1.7) // 4 cups of juice, 3 of sugar, 6 tsp of lemon juice are 1.69 L
    expect(get('dill-pickle').batchLitres).toBe(3.8) // vinegar, brine, salt, sugar, spices; the cucumbers are packed raw
    expect(get('tomato-ketchup').batchLitres).toBe(12.8) // 24 lb are 10.9 kg, and 7.75 cups
    expect(get('tomato-halved').batchLitres).toBe(6.7) // seven filled quarts; the waste of 21 lb stays out
    expect(get('grape-plum-jelly').batchLitres).toBe(3.8) // juice, sugar and water; the fruit stays in the bag
  })

  it('declares the allergens of the practice day', () => {
    expect(get('dill-pickle').allergens).toEqual(['mustard'])
    expect(get('bread-and-butter-pickles').allergens).toEqual(['mustard', 'celery'])
    expect(get('plum-jam').allergens).toEqual([])
  })

  it('soaks dill pickles for twelve hours the day before', () => {
    expect(get('dill-pickle').leadSteps).toEqual([{ label: 'Brine soak', hours: 12, where: 'any clean food-safe tub' }])
  })
})

describe('product letters of a day', () => {
  it('are the recipes own where they differ', () => {
    expect([...assignProductLetters([get('plum-jam'), get('dill-pickle')]).values()]).toEqual(['J', 'D'])
  })

  it('never repeat: the later recipe takes a letter of its title', () => {
    expect([...assignProductLetters([get('salsa'), get('chile-salsa'), get('spaghetti-sauce-meatless')]).values()]).toEqual(['S', 'C', 'P'])
  })

  it('fall back on the alphabet and end with it', () => {
    const same = (count: number) => Array.from({ length: count }, (_, index) => ({ id: String(index), title: 'Jj', productLetter: 'J' }))
    expect([...assignProductLetters(same(3)).values()]).toEqual(['J', 'A', 'B'])
    expect(new Set(assignProductLetters(same(22)).values()).size).toBe(22)
    expect(() => assignProductLetters(same(23))).toThrow('at most 22 recipes')
  })
})

describe('a yield in other jars', () => {
  it('is the printed one in the printed jar', () => {
    expect(yieldInJars(get('dill-pickle'), 'pint')).toEqual({ low: 7, typical: 8, high: 9 })
  })

  it('is the same volume in whole jars', () => {
    expect(yieldInJars(get('dill-pickle'), 'quart')).toEqual({ low: 3, typical: 4, high: 4 }) // 7, 8, 9 pints
    expect(yieldInJars(get('dill-pickle'), 'half-pint')).toEqual({ low: 14, typical: 16, high: 18 })
    expect(yieldInJars(get('plum-jam'), '12-oz')).toEqual({ low: 4, typical: 5, high: 5 }) // 56, 64 fl oz in 12s
    expect(yieldInJars(get('dill-pickle'), 'pint-and-half')).toEqual({ low: 4, typical: 5, high: 6 }) // 112, 128, 144 fl oz in 24s
  })
})
