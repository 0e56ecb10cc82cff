import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { sayAskedFor } from '@/app/(member)/g/[groupId]/days/[dayId]/_overview/say-asked-for'
import { forecastDay } from '@/shared/day/day-forecast'
import type { ForecastPreparation } from '@/shared/day/preparation-jars'
import { planOnce } from '@/shared/planning/plan-once'
import { recipeById } from '@/shared/recipes/recipe-library'
import { sayJarRange } from '@/shared/wording/say-forecast'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const preparation = (id: string, jarSize: 'half-pint' | 'pint', jars: number): ForecastPreparation => {
  const recipe = recipeById(id)
  if (!recipe) throw new Error(`no recipe ${id}`)
  return { id, letter: recipe.productLetter, recipe, jarSize, process: {}, offered: jars, claimed: jars, spareJars: 0, batches: [] }
}

describe('the headline of a day', () => {
  it('says the ranges of the sheet below it: nine days of ten, not the sum of every batch at its worst and best', () => {
    const ids = [
      ['plum-jam', 'plum_jam', 'half-pint', 48],
      ['dill-pickles', 'dill_pickle', 'pint', 32],
    ] as const
    const forecasts = forecastDay({ preparations: ids.map(([, id, jar, jars]) => preparation(id, jar, jars)), promised: [], weighed: [] })
    const forecast = new Map(forecasts.map((each, index) => [String(ids[index]?.[0]), each]))
    const outcome = planOnce(s1DayProblem)
    if (!outcome.ok) throw new Error('the evening has a plan')
    const outlook = { problem: s1DayProblem, outcome, stored: null, isOutdated: false, isOfOffer: false }
    const words = renderToStaticMarkup(sayAskedFor(outlook, forecast)).replace(/<[^>]+>/g, '')
    const [jam, pickles] = forecasts.map(sayJarRange)
    expect(words).toBe(`Asked for: 48 half-pints of jam, 32 pints of pickles. Likely to fill: ${jam} and ${pickles}.`)
    expect(pickles).toBe('30 to 34')
  })
})
