import { describe, expect, it } from 'vitest'
import { shareJars } from '@/shared/allocation/share-jars'
import type { ShareRule } from '@/shared/allocation/share-table'
import { explainShare } from '@/shared/wording/explain-share'

function explained(
  sealed: number,
  asked: Record<string, number>,
  name: string,
  rule: ShareRule = { kind: 'in-proportion' },
  allergens: string[] = [],
): string {
  const claims = Object.entries(asked).map(([each, jars]) => ({
    householdId: each,
    householdName: each,
    jars,
    allergens: each === name ? allergens : [],
  }))
  const table = shareJars(sealed, claims, rule)
  const share = table.ok ? table.value.shares.find((each) => each.householdName === name) : undefined
  if (!table.ok || !share) throw new Error('no share')
  return explainShare(table.value, share)
}

const JAM = { Alderby: 10, Brightwater: 8, Copperfold: 6, Dunmarrow: 8, Elmsway: 10, Fennick: 6 }

describe('a share in words', () => {
  it.each([
    [
      'Alderby',
      'You asked for 10 of 48. 46 sealed. 10 × 46 ÷ 48 = 9.58, so 9 jars. 4 jars were left over; .75, .75, .67 and .67 came before .58.',
    ],
    [
      'Brightwater',
      'You asked for 8 of 48. 46 sealed. 8 × 46 ÷ 48 = 7.67, so 8 jars. 4 jars were left over, and your .67 was one of the largest fractions.',
    ],
  ])('says to %s how the jam was shared', (name, sentence) => {
    expect(explained(46, JAM, name)).toBe(sentence)
  })

  it('says to Copperfold why seven pickles, and to Dunmarrow why none', () => {
    const pickles = { Alderby: 6, Brightwater: 4, Copperfold: 8, Dunmarrow: 2, Elmsway: 6, Fennick: 8 }
    expect(explained(28, pickles, 'Dunmarrow', undefined, ['mustard'])).toBe(
      'None for you: it contains mustard, which is on your household’s list.',
    )
    expect(explained(28, { ...pickles, Dunmarrow: 0 }, 'Copperfold')).toBe(
      'You asked for 8 of 32. 28 sealed. 8 × 28 ÷ 32 = 7.00: 7 jars for you.',
    )
    expect(explained(28, { ...pickles, Dunmarrow: 0 }, 'Dunmarrow')).toBe('You asked for none.')
  })

  it('names a tie', () => {
    expect(explained(1, { Ash: 1, Brook: 1 }, 'Ash')).toBe(
      'You asked for 1 of 2. 1 sealed. 1 × 1 ÷ 2 = 0.50, so 1 jar. 1 jar was left over, and your .50 was one of the largest fractions. Equal fractions go by household name, larger claims first where the rule says so.',
    )
    expect(explained(1, { Ash: 1, Brook: 1 }, 'Brook')).toContain('so no jar. 1 jar was left over; your .50 stood level with others.')
  })

  it('says when there was enough, one each, or a draw', () => {
    expect(explained(60, JAM, 'Alderby')).toBe('You asked for 10 of 48. 60 sealed. You get all 10.')
    expect(explained(1, { Ash: 1, Brook: 2 }, 'Ash', { kind: 'one-each-first' })).toBe(
      'You asked for 1 of 3. 1 sealed. There are fewer jars than households, so one each to the largest claims: no jar for you.',
    )
    expect(explained(10, { Ash: 10, Brook: 5 }, 'Brook', { kind: 'one-each-first' })).toBe(
      'You asked for 5 of 15. 10 sealed. One jar first, then 4 × 8 ÷ 13 = 2.46, so 3 jars. 1 jar was left over; .54 came before .46.',
    )
    expect(explained(3, { Ash: 2, Brook: 2 }, 'Ash', { kind: 'by-lot', seed: 1 })).toMatch(/drawn by lot and you are number [12]\./)
  })

  it('never says a fraction as a whole jar', () => {
    // 1 × 999 ÷ 1001 is 0.998.
    expect(explained(999, { Ash: 1000, Brook: 1 }, 'Ash')).toContain('1 jar was left over; .99 came before .00.')
  })
})
