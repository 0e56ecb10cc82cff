import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import RecipePage from '@/app/(visitor)/recipes/[id]/page'
import { RECIPES } from '@/shared/recipes/recipe-library'

const pageOf = async (id: string): Promise<string> => {
  const html = renderToStaticMarkup(await RecipePage({ params: Promise.resolve({ id }) }))
  return html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
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
