import { describe, expect, it } from 'vitest'
import { RECIPES } from '@/shared/recipes/recipe-library'
import { RECIPE_SECTIONS, sayJarChoice, sayKeeping, sayLead, sayScaling, sayWork, sayYield, sectionOf } from '@/shared/wording/say-recipe'

describe('the words of a recipe', () => {
  it('say a yield as a range, or as one number', () => {
    expect(sayYield({ low: 7, typical: 8, high: 9 }, 'pint')).toBe('7 to 9 pints')
    expect(sayYield({ low: 1, typical: 1, high: 1 }, 'quart')).toBe('1 quart')
  })

  it('say whether minutes are published, and never make up those nobody timed', () => {
    expect(sayWork({ low: 5, typical: 5, high: 5, basis: 'published' }, 'clock')).toBe('5 min, published')
    expect(sayWork({ low: 20, typical: 40, high: 60, basis: 'common practice' }, 'person')).toBe('20 to 60 person-minutes, common practice')
    expect(sayWork(null, 'clock')).not.toMatch(/\d/)
  })

  it('repeat tested batches instead of scaling them', () => {
    expect(sayScaling({ scaling: 'whole-batches-only' })).toMatch(/^Repeated, not scaled/)
    expect(sayScaling({ scaling: 'to-kettle-volume' })).toMatch(/^By the canner load/)
  })

  it('call no jar good for the shelf without a process', () => {
    for (const recipe of RECIPES) expect(/shelf/.test(sayKeeping(recipe))).toBe(recipe.process !== null)
  })

  it('put every recipe into one section, and leave no section empty', () => {
    const used = new Set(RECIPES.map(sectionOf))
    expect([...used].sort()).toEqual([...RECIPE_SECTIONS].sort())
  })

  it('name the jars and the lead times', () => {
    expect(sayJarChoice(['pint', 'quart'])).toBe('In pint or quart jars')
    expect(sayJarChoice(['pint'])).toBe('Only in pint jars')
    expect(sayLead(12)).toBe('12 h')
    expect(sayLead(672)).toBe('28 days')
  })
})
