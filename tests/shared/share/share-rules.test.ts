import { describe, expect, it } from 'vitest'
import { seedOf } from '@/shared/allocation/draw-order'
import { shareJars } from '@/shared/allocation/share-jars'
import type { Claim, ShareRule } from '@/shared/allocation/share-table'
import { balanceDay, type JarTally, type LidCount } from '@/shared/share/count-day'
import { SHARE_RULE_KINDS } from '@/shared/forms/day'
import { dayShareRule, productRule } from '@/shared/share/day-share-rule'
import { pickJars } from '@/shared/share/pick-jars'
import { poolProducts, sayPool } from '@/shared/share/pool-products'
import { sayDayDifference } from '@/shared/wording/say-day-balance'
import { sayDraw, sayGiven, sayQuota, sayShareReason, sayShareRule } from '@/shared/wording/say-share'

describe('picking jars', () => {
  it('gives each household the next jars in order', () => {
    const picked = pickJars(
      ['a', 'b', 'c', 'd'],
      [
        { householdId: 'x', jars: 1 },
        { householdId: 'y', jars: 0 },
        { householdId: 'z', jars: 2 },
      ],
    )
    expect([...picked]).toEqual([
      ['x', ['a']],
      ['y', []],
      ['z', ['b', 'c']],
    ])
  })

  it('refuses to give more than there are', () => {
    expect(() => pickJars(['a'], [{ householdId: 'x', jars: 2 }])).toThrow(RangeError)
  })
})

describe('a pool', () => {
  const jam = { id: '1', recipeId: 'plum-jam', letter: 'J', title: 'Plum jam with liquid pectin' }
  const pickles = { id: '2', recipeId: 'dill-pickle', letter: 'D', title: 'Fresh-pack dill pickles' }
  it.each([
    ['common', ['1', '2']],
    ['jam', ['1']],
    ['Pickle', ['2']],
    ['d', ['2']],
    ['plum-jam', ['1']],
    ['something else', ['1', '2']],
  ])('named %s is carried by %j', (pool, ids) => {
    expect(poolProducts(pool, [jam, pickles])).toEqual(ids)
  })
})

describe('a pool in words', () => {
  const jam = { id: '1', recipeId: 'own-7f', letter: 'J', title: 'Plum jam with liquid pectin' }
  it.each([
    ['common', 'every jar of the day'],
    ['own-7f', 'plum jam'],
    ['1', 'plum jam'],
    ['pickle', 'pickle'],
  ])('that is kept as %s is %s', (pool, words) => {
    expect(sayPool(pool, [jam])).toBe(words)
  })
})

describe('a day’s rule', () => {
  it('is one of the published ones, or in proportion', () => {
    expect(dayShareRule('equal', 'd1')).toEqual({ kind: 'equal' })
    expect(dayShareRule('one-each-first', 'd1')).toEqual({ kind: 'one-each-first' })
    expect(dayShareRule('by-hours', 'd1')).toEqual({ kind: 'by-contribution', of: 'hours' })
    expect(dayShareRule('by-produce', 'd1')).toEqual({ kind: 'by-contribution', of: 'produce' })
    expect(dayShareRule('unheard of', 'd1')).toEqual({ kind: 'in-proportion' })
  })

  it('of each kind that can be chosen is a rule of its own', () => {
    expect(new Set(SHARE_RULE_KINDS.map((kind) => sayShareRule(dayShareRule(kind, 'd1')))).size).toBe(SHARE_RULE_KINDS.length)
  })

  it('by lot is drawn with a seed that stands with the day, and for each product anew', () => {
    expect(seedOf('foobar')).toBe(0xbf9cf968) // the published test vector of 32-bit FNV-1a
    const rule = dayShareRule('by-lot', 'd1')
    expect(rule).toEqual({ kind: 'by-lot', seed: seedOf('d1') })
    expect(dayShareRule('by-lot', 'd2')).not.toEqual(rule)
    const jam = { recipeId: 'plum-jam', jarSize: 'half-pint' }
    expect(productRule(rule, jam)).toEqual(productRule(rule, { ...jam }))
    expect(productRule(rule, jam)).not.toEqual(productRule(rule, { ...jam, jarSize: 'pint' }))
    expect(productRule({ kind: 'equal' }, jam)).toEqual({ kind: 'equal' })
  })
})

describe('the words of a share', () => {
  const claims: Claim[] = [
    { householdId: 'a', householdName: 'Ash', jars: 4 },
    { householdId: 'b', householdName: 'Birch', jars: 4 },
    { householdId: 'c', householdName: 'Cedar', jars: 0 },
    { householdId: 'd', householdName: 'Dogwood', jars: 2, allergens: ['mustard'] },
  ]
  const say = (sealed: number, rule: ShareRule) => {
    const shared = shareJars(sealed, claims, rule)
    return shared.ok ? shared.value.shares.map((share) => `${sayQuota(share)}|${sayShareReason(share)}`) : []
  }

  it('tell ties, allergens, nothing asked', () => {
    expect(say(7, { kind: 'in-proportion' })).toEqual([
      '3.50|4 × 7 ÷ 8 = 3.50: rounded up, the fractions were equal and the name came first.',
      '3.50|4 × 7 ÷ 8 = 3.50: rounded down, the fractions were equal and other names came first.',
      '|Asked for none.',
      '|None: it contains mustard, which is on the household’s list.',
    ])
  })

  it('tell enough for all, whole parts, one each, first jars and lots', () => {
    expect(say(8, { kind: 'in-proportion' })[0]).toBe('|All 4 that were asked for.')
    expect(say(6, { kind: 'in-proportion' })[0]).toBe('3.00|4 × 6 ÷ 8 = 3.00, a whole number.')
    expect(say(1, { kind: 'one-each-first' })[0]).toBe('|Fewer jars than households: one each, larger claims first.')
    expect(say(5, { kind: 'one-each-first' })[0]).toContain('1 first, then 3 × 3 ÷ 6 = 1.50')
    expect(say(3, { kind: 'by-lot', seed: 7 })[0]).toMatch(/^\|By lot, in place [12]\.$/)
  })

  it('tell the order that was drawn, and what a rule by hours or produce counts', () => {
    const drawn = shareJars(3, claims, { kind: 'by-lot', seed: 7 })
    const even = shareJars(3, claims, { kind: 'equal' })
    if (!drawn.ok || !even.ok) return expect.unreachable()
    expect(sayDraw(drawn.value)).toMatch(/^drawn with seed 7: (?:Ash, Birch|Birch, Ash)$/)
    expect(sayDraw(even.value)).toBe('')
    expect(sayGiven({ kind: 'by-contribution', of: 'hours' }, 150, true)).toBe('The rule counts what you give: 2½ h so far.')
    expect(sayGiven({ kind: 'by-contribution', of: 'produce' }, 1250, false)).toBe(
      'The rule counts what they give: 12½ lb of produce so far.',
    )
    expect(sayGiven({ kind: 'equal' }, 150, true)).toBe('')
  })

  it('name every rule', () => {
    const rules: ShareRule[] = [
      { kind: 'in-proportion' },
      { kind: 'one-each-first' },
      { kind: 'equal' },
      { kind: 'by-contribution', of: 'hours' },
      { kind: 'by-contribution', of: 'produce' },
      { kind: 'by-lot', seed: 1 },
    ]
    expect(new Set(rules.map(sayShareRule)).size).toBe(6)
  })
})

describe('the balance of a day', () => {
  const tally = (state: string, seal: JarTally['seal'], jars: number): JarTally => ({ jarSize: 'pint', state, seal, jars, lidsUsed: jars })
  const lids: LidCount = {
    lidsAtStart: 40,
    lidsSpoiled: 0,
    lidsLeft: 10,
    bandsAtStart: 38,
    bandsReturned: 38,
    bandsDiscarded: 0,
    bandsOnJars: 0,
  }
  // The pints of the Plum and Pickle Evening: 30 filled of 38, one broke, one did not seal, 28 sealed.
  const pints = [
    tally('sealed', 'sealed', 8),
    tally('shared-out', 'sealed', 20),
    tally('unsealed', 'unsealed', 1),
    tally('broken', null, 1),
  ]
  const empties = { pint: { brought: 0, bought: 38, returned: 8, brokenEmpty: 0 } }

  it('adds up when everything is accounted for', () => {
    const balance = balanceDay(pints, empties, lids)
    expect(balance.differences).toEqual([])
    expect(balance.unsettled).toBe(0)
    expect(balance.lines.map(({ name }) => name)).toEqual([
      'empty-jars',
      'after-the-canner',
      'unsealed-jars',
      'sealed-jars',
      'lids',
      'bands',
    ])
  })

  it('names what is missing', () => {
    const balance = balanceDay(pints, { pint: { ...empties.pint, returned: 7 } }, { ...lids, lidsLeft: 9, bandsReturned: 40 })
    expect(balance.differences.map(sayDayDifference)).toEqual([
      expect.stringContaining('1 pint missing'),
      expect.stringContaining('1 lid missing'),
      expect.stringContaining('2 bands too many'),
    ])
  })

  it('counts second processes, what was thrown out and what is held where they belong', () => {
    const more = [
      ...pints,
      tally('sealed', 'unsealed', 2),
      tally('discarded', 'unsealed', 1),
      tally('discarded', null, 1),
      tally('held', 'sealed', 1),
      tally('discarded', 'sealed', 1),
      tally('processed', null, 3),
    ]
    const balance = balanceDay(more, {}, lids)
    expect(balance.unsettled).toBe(3)
    const line = (name: string) => balance.lines.find((each) => each.name === name)
    expect(line('unsealed-jars')).toMatchObject({ difference: 0, cameIn: [['unsealed', 5]] })
    expect(line('sealed-jars')?.difference).toBe(0)
    expect(line('after-the-canner')?.difference).toBe(3) // the unchecked ones
  })
})
