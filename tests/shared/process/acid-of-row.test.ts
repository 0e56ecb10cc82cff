import { describe, expect, it } from 'vitest'
import { acidOfRow } from '@/shared/process/acid-of-row'

const ofTomatoes = (jar: string) => acidOfRow(`tomatoes-whole-water--boiling-water/boiling-water/hot/${jar}/0-1000-ft`)

// USDA Complete Guide to Home Canning, AIB No. 539, Guide 3, acidification: 2 tbsp of bottled lemon juice or ½ tsp of citric acid a quart,
// half of both a pint; 4 tbsp of vinegar a quart instead.
describe('the acid of a row', () => {
  it('is for the jar of its key', () => {
    expect(ofTomatoes('quart')).toMatchObject({ lemonJuiceTbsp: 2, citricAcidTsp: 0.5, vinegarTbsp: 4 })
    expect(ofTomatoes('pint')).toMatchObject({ lemonJuiceTbsp: 1, citricAcidTsp: 0.25, vinegarTbsp: 2 })
  })

  it('is none where the tested recipe has it, where the food needs none, and for what is no key', () => {
    expect(acidOfRow('dill-pickles-fresh-pack--boiling-water/boiling-water/raw/quart/0-1000-ft')).toBeNull()
    expect(acidOfRow('peaches--boiling-water/boiling-water/raw/quart/0-1000-ft')).toBeNull()
    for (const key of ['', 'no-such-row/boiling-water/hot/quart/0-1000-ft', 'tomatoes-whole-water--boiling-water'])
      expect(acidOfRow(key)).toBeNull()
    expect(ofTomatoes('gallon')).toBeNull()
  })
})
