import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { WhySoMany } from '@/app/(member)/g/[groupId]/days/[dayId]/shares/why-so-many'
import type { SharesPage } from '@/lib/queries/shares'
import { shareJars } from '@/shared/allocation/share-jars'
import { sayQuota, sayShareReason } from '@/shared/wording/say-share'

const NAMES = ['Ash', 'Birch', 'Cedar']

/** A page with jam alone: 5 jars for three who asked for 4, 2 and 2. */
function pageOf(isAwarded: boolean, change: Partial<SharesPage['products'][number]['cells'][string]> = {}): SharesPage {
  const claims = [4, 2, 2].map((jars, index) => ({ householdId: NAMES[index] ?? '', householdName: NAMES[index] ?? '', jars }))
  const shared = shareJars(5, claims, { kind: 'in-proportion' })
  if (!shared.ok) throw new Error(shared.problem.kind)
  const table = shared.value
  const cells = Object.fromEntries(
    table.shares.map((share) => [
      share.householdId,
      {
        ...{
          asked: share.asked,
          jars: share.jars,
          quota: sayQuota(share),
          reason: isAwarded ? sayShareReason(share) : '',
          allergens: [],
          own: [],
        },
        ...(share.householdId === 'Ash' ? change : {}),
      },
    ]),
  )
  const jam = {
    preparationId: 'jam',
    title: 'Plum jam',
    pattern: 'plum',
    isCold: false,
    jarSize: 'half-pint',
    sealed: 5,
    unchecked: 0,
  } as const
  const sums = { asked: table.asked, given: table.given, left: table.left, exactSum: '5.00', cells, table, fit: null, offers: [] }
  const household = { handedOver: false, inStore: 0, contact: '', wantsOwnGlass: false, ownGlass: [] }
  return {
    products: [{ ...jam, ...sums }],
    households: NAMES.map((name) => ({ id: name, name, ...household })),
    ...{ isAwarded, anyHandedOver: false, pickUp: { place: '', until: null, contact: '' }, everybody: [] },
  }
}
const drawn = (page: SharesPage, householdId: string, seesAll: boolean) =>
  renderToStaticMarkup(<WhySoMany {...{ page, householdId, seesAll }} />)

describe('why a household gets so many', () => {
  it('says the own sum in whole sentences, before the jars are shared out and after, and nobody else’s to a member', () => {
    for (const page of [pageOf(false), pageOf(true)]) {
      const html = drawn(page, 'Ash', false)
      expect(html).toContain('You asked for 4 of 8. 5 sealed. 4 × 5 ÷ 8 = 2.50, so 3 jars.')
      expect(html).not.toContain('Birch')
    }
  })

  it('lets stand what was written down where it is not what the table says now', () => {
    const html = drawn(pageOf(true, { jars: 4, reason: 'All 4 that were asked for.' }), 'Ash', false)
    expect(html).toContain('All 4 that were asked for.')
    expect(html).not.toContain('You asked for')
  })

  it('says everybody’s to who may see them, folded on the screen and whole on paper', () => {
    const html = drawn(pageOf(true), 'Ash', true)
    expect(html.match(/2 × 5 ÷ 8 = 1\.25/g)).toHaveLength(4)
    expect(html).toContain('paper-only')
    expect(drawn(pageOf(true), 'nobody', true)).toContain('Household by household')
    expect(drawn(pageOf(true), 'nobody', false)).toBe('')
  })
})
