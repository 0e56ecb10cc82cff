import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import RecipePage from '@/app/(visitor)/recipes/[id]/page'
import { RECIPES } from '@/shared/recipes/recipe-library'

const pageOf = async (id: string, asked: Record<string, string> = {}): Promise<string> => {
  const html = renderToStaticMarkup(await RecipePage({ params: Promise.resolve({ id }), searchParams: Promise.resolve(asked) }))
  return html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ')
}

describe('the page of every recipe', () => {
  it('says its publication, its ingredients and its allergens, and shows no process time of its own', async () => {
    for (const { id, source, ingredients, allergens } of RECIPES) {
      const text = await pageOf(id)
      for (const said of [source.publication, source.section, ...ingredients.map(({ item }) => item), ...allergens])
        expect(text, id).toContain(said)
      expect(text).not.toMatch(/\d+ min(utes)? (at|in the canner)/)
    }
  })

  it('calls jars good for the shelf only where a process is held, and keeps the others cold', async () => {
    for (const { id, process } of RECIPES) {
      const text = await pageOf(id)
      expect(/For the shelf only by its published process/.test(text), id).toBe(process !== null)
      expect(/fridge or freezer/i.test(text), id).toBe(process === null)
      expect(text).not.toContain('shelf-stable')
    }
  })

  it('sends the reader to the full recipe where only key ingredients were read', async () => {
    for (const { id, ingredientList } of RECIPES)
      expect(/Key ingredients only: read the full recipe/.test(await pageOf(id)), id).toBe(ingredientList === 'key-only')
  })

  it('gives quantities in both systems, canner loads and bushels', async () => {
    const text = await pageOf('tomato-halved')
    // Michigan State University Extension (1997), item 01600874: 21 lb for 7 quarts, 13 lb for 9 pints, 53 lb a bushel, 15 to 21 quarts.
    expect(text).toContain('Canner of 7 quarts 21 lb (9.53 kg)')
    expect(text).toContain('Canner of 9 pints 13 lb (5.9 kg)')
    expect(text).toContain('One bushel, 53 lb (24 kg) 15 to 21 quarts')
  })
})

describe('how much a recipe makes', () => {
  it('is asked by two forms that work without script, each leading back to its own place', async () => {
    const html = renderToStaticMarkup(await RecipePage({ params: Promise.resolve({ id: 'salsa' }), searchParams: Promise.resolve({}) }))
    expect(html.match(/<form class="form" action="\/recipes\/salsa#how-much" method="get">/g)).toHaveLength(2)
    expect(html).not.toContain('boil-down')
  })

  it('says jars with their range, the chance of each promise, batches, what to buy and where it is from', async () => {
    const text = await pageOf('salsa', { amount: '25', unit: 'lb', jar: 'pint', culls: '0', unsealed: '2' })
    expect(text).toMatch(/2\d to 2\d pints sealed, typically 2\d/)
    expect(text).toMatch(/Promise \d+ pints kept in \d+ of 10+ such days/)
    expect(text).toContain('Tested batches 3, each by itself')
    expect(text).toContain('6 cups (1.42 L) bottled lemon or lime juice')
    expect(text).toContain('2 % of jars do not seal')
    expect(text).toContain('National Center for Home Food Preservation')
  })

  it('says the produce and bushels that wanted jars need', async () => {
    const text = await pageOf('tomato-halved', { jars: '42', jar: 'quart', culls: '10', unsealed: '2' })
    expect(text).toMatch(/42 quarts come about in 9\d? of 10/)
    expect(text).toMatch(/That is \d bushels of 53 lb/)
  })

  it('refuses in three parts, marks the entry that does not fit, and names what is no question', async () => {
    expect(await pageOf('salsa', { amount: '3', unit: 'lb', jar: 'pint' })).toMatch(
      /Less than one batch\..*One tested batch takes 7 lb.*Instead:/,
    )
    expect(await pageOf('salsa', { amount: 'many', unit: 'lb' })).toContain('Type the amount as a number')
    expect(await pageOf('salsa', { yield: '3' })).toContain('Nothing here is called "yield"')
  })

  it('reckons a boil-down with its inputs and sources, and marks what is common practice', async () => {
    const text = await pageOf('jam-apricot', { juice: '3', water: '1', juiceUnit: 'L', fruit: 'plum', sugar: '1.25', sugarUnit: 'kg' })
    expect(text).toContain('1.9 to 2.05 L')
    expect(text).toContain('9 half-pints; sterilise 11, a fifth more (common practice)')
    expect(text).toMatch(/3 L \(3.17 qt\) of plum juice at 12.29 to 16.29 degrees Brix/)
    expect(text).toContain('about 5 of 10 parts are left')
    expect(text).toContain('21 CFR 150.140(d) and 150.160(d)')
    expect(text).toContain('Common practice of the trade, in no publication')
    expect(await pageOf('jam-apricot', { juice: '1', juiceUnit: 'L', fruit: 'plum', sugar: '9', sugarUnit: 'kg' })).toContain(
      'Nothing to boil down.',
    )
  })
})
