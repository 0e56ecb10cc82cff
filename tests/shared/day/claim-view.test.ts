import { describe, expect, it } from 'vitest'
import { claimView } from '@/shared/day/claim-view'
import { productName, productNoun } from '@/shared/day/product-name'
import { whoAvoids } from '@/shared/day/who-avoids'
import { sayAllergenRefusal } from '@/shared/wording/say-allergen-refusal'

/** As if every number from low to high were equally likely. */
const expected = (low: number, typical: number, high: number) => {
  const chances = Array.from({ length: high + 1 }, (_, jars) => (jars < low ? 0 : 1 / (high - low + 1)))
  return { sealed: { low, typical, high }, chances }
}
const jam = expected(42, 48, 49)
const claims = new Map([
  ['alderby', 10],
  ['brightwater', 8],
  ['copperfold', 6],
  ['dunmarrow', 8],
  ['elmsway', 10],
  ['fennick', 6],
])
const claimants = new Map([...claims.keys()].map((id) => [id, `${id.charAt(0).toUpperCase()}${id.slice(1)}`]))
const dunmarrow = { id: 'dunmarrow', name: 'Dunmarrow' }
const rule = { kind: 'in-proportion' } as const

describe('what a household sees of the jam', () => {
  it('is 48 jars likely and 42 sure, 8 of its own, 40 for others; of 42 it would get 7', () => {
    const view = claimView({ offered: 48, claims, claimants }, jam, dunmarrow, rule)
    expect(view).toMatchObject({ likely: 48, sure: 42, yours: 8, others: 40, most: 8 })
    expect(view.ifOnlySure[8]).toBe(7) // 42 × 8 ÷ 48 is 7 exactly
  })

  it('lets it ask for what the others leave, and gives a figure for every number up to that', () => {
    const view = claimView({ offered: 48, claims: new Map([['elmsway', 10]]), claimants }, jam, dunmarrow, rule)
    expect(view).toMatchObject({ yours: 0, others: 10, most: 38 })
    expect(view.ifOnlySure).toHaveLength(39)
    expect(view.ifOnlySure[0]).toBe(0)
  })

  it('breaks ties by household name, as the sharing does', () => {
    const equal = new Map([...claims.keys()].map((id) => [id, 3]))
    const offer = { offered: 18, claims: equal, claimants }
    const sure = expected(14, 18, 18) // 14 sure jars for six claims of 3, 2 each and one more for the first two names
    expect(claimView(offer, sure, { id: 'alderby', name: 'Alderby' }, rule).ifOnlySure[3]).toBe(3)
    expect(claimView(offer, sure, { id: 'fennick', name: 'Fennick' }, rule).ifOnlySure[3]).toBe(2)
  })

  it('never promises more sure jars than are offered', () => {
    expect(claimView({ offered: 20, claims: new Map(), claimants }, jam, dunmarrow, rule)).toMatchObject({ likely: 20, sure: 20 })
  })

  it('says for every count how likely it is that everybody gets all they ask for', () => {
    const { chances } = claimView({ offered: 48, claims: new Map([['elmsway', 40]]), claimants }, jam, dunmarrow, rule)
    expect(chances).toHaveLength(9)
    expect(chances[2]).toBeCloseTo(1) // 42 jars come in any case
    expect(chances[8]).toBeCloseTo(2 / 8) // 48 or 49, of the eight numbers from 42 to 49
  })

  it('stops at the cap, but takes nothing from who asks for more already', () => {
    const offer = { offered: 48, claims: new Map([['dunmarrow', 8]]), claimants }
    expect(claimView(offer, jam, { id: 'elmsway', name: 'Elmsway' }, rule, 6).most).toBe(6)
    expect(claimView(offer, jam, dunmarrow, rule, 6).most).toBe(8)
  })
})

describe('who avoids what', () => {
  const household = { allergens: ['celery'], people: [{ name: 'Esme', allergies: ['Mustard '] }] }

  it('names people only where their own list says it', () => {
    expect(whoAvoids(['mustard', 'celery', 'soy'], household)).toEqual([
      { allergen: 'mustard', people: ['Esme'] },
      { allergen: 'celery', people: [] },
    ])
  })

  it('is said in three parts', () => {
    const refusal = sayAllergenRefusal('Dill pickles', whoAvoids(['mustard'], household))
    expect(refusal).toMatchObject({
      what: 'Dill pickles: not for this household.',
      why: 'They contain mustard. Esme’s mustard allergy is on your list.',
      instead: expect.stringContaining('Ask for another product'),
    })
  })
})

it.each([
  ['Plum jam with liquid pectin', 'Plum jam', 'jam'],
  ['Fresh-pack dill pickles', 'Dill pickles', 'pickles'],
  ['Tomatoes, halved, packed in water', 'Tomatoes', 'tomatoes'],
])('%s is called %s', (title, name, noun) => {
  expect([productName(title), productNoun(title)]).toEqual([name, noun])
})
