import { beforeAll, describe, expect, it } from 'vitest'
import { sharesPage } from '@/lib/queries/shares'
import { countHours } from '@/lib/services/money/count-hours'
import { awardJars } from '@/lib/services/share/award-jars'
import type { ShareTable } from '@/shared/allocation/share-table'
import { sayDraw } from '@/shared/wording/say-share'
import { CLAIMS } from '../../../fixtures/s1-day-actuals'
import { freshDatabase } from '../../../support/fresh-database'
import { runS1Evening } from '../../../support/run-s1-evening'
import { as, must, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()
const { dayId, groupId } = S1

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  await runS1Evening(fresh.client)
})

const publish = (shareRule: string) => fresh.client.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { shareRule } })
const awarded = async (preparationId: string) => {
  const awards = await fresh.client.award.findMany({ where: { preparationId, asked: { gt: 0 } }, orderBy: { householdId: 'asc' } })
  return Object.fromEntries(awards.map(({ householdId, jars }) => [householdId, jars]))
}
const HOURS = { Alderby: 4, Brightwater: 2, Copperfold: 1, Dunmarrow: 0, Elmsway: 3, Fennick: 2 }

describe('the evening shared by hours', () => {
  it('waits until the hours of all who claim are counted', async () => {
    await publish('by-hours')
    const refused = await as('Ada', awardJars, { dayId })
    expect(refused).toMatchObject({
      ok: false,
      problem: { code: 'hours-not-counted', why: expect.stringContaining('Alderby, Brightwater, Copperfold, Dunmarrow, Elmsway, Fennick') },
    })
    for (const [householdId, hours] of Object.entries(HOURS)) await must(as('Ada', countHours, { dayId, householdId, hours }))
  })

  it('gives who worked most their jars first, and who worked none what is left', async () => {
    await must(as('Ada', awardJars, { dayId }))
    // 46 by 240, 120, 60, 0, 180 and 120 minutes: all who worked reach what they asked for, and 6 are left.
    expect(await awarded('jam')).toEqual({ Alderby: 10, Brightwater: 8, Copperfold: 6, Dunmarrow: 6, Elmsway: 10, Fennick: 6 })
    // 28: four reach what they asked for, and 60 of 60 minutes take the 4 that they leave.
    expect(await awarded('pickles')).toEqual({ Alderby: 6, Brightwater: 4, Copperfold: 4, Elmsway: 6, Fennick: 8 })
    const copperfold = await fresh.client.award.findFirstOrThrow({ where: { preparationId: 'pickles', householdId: 'Copperfold' } })
    expect(copperfold.reason).toBe('60 × 4 ÷ 60 = 4.00, a whole number.')
  })
})

describe('the evening shared by produce', () => {
  it('counts plums and cucumbers as they were weighed in, and nothing that was only promised', async () => {
    await publish('by-produce')
    await fresh.client.pledge.create({
      data: { groupId, id: 'never-came', dayId, householdId: 'Elmsway', kind: 'produce', item: 'plums', quantity: 100, unit: 'lb' },
    })
    await must(as('Ada', awardJars, { dayId }))
    const { products } = await sharesPage(groupId, dayId, 'by-produce')
    const weights = products
      .find((each) => each.preparationId === 'jam')
      ?.table.shares.map(({ householdName, sum }) => [householdName, sum?.weight])
    const lots = await fresh.client.ingredientLot.findMany({ where: { householdId: { not: null } } })
    const brought = new Set(lots.map(({ householdId }) => householdId))
    const jam = await awarded('jam')
    for (const [name, jars] of Object.entries(jam)) if (brought.has(name)) expect([name, jars]).toEqual([name, CLAIMS[name]?.jam])
    expect(brought).not.toContain('Elmsway')
    // The others share the rest in proportion to what they asked for.
    expect(weights?.filter(([, weight]) => weight !== undefined)).toEqual(
      Object.keys(CLAIMS)
        .filter((name) => !brought.has(name))
        .map((name) => [name, CLAIMS[name]?.jam]),
    )
    expect(Object.values(jam).reduce((sum, jars) => sum + jars, 0)).toBe(46)
  })
})

describe('the evening shared by lot', () => {
  it('gives one jar in turn in an order that anybody can redo, whatever is shared again', async () => {
    await publish('by-lot')
    await must(as('Ada', awardJars, { dayId }))
    const first = [await awarded('jam'), await awarded('pickles')]
    const { products } = await sharesPage(groupId, dayId, 'by-lot')
    for (const { preparationId, sealed, table } of products) expect(await awarded(preparationId)).toEqual(inTurn(sealed, table))
    const entry = await fresh.client.history.findFirstOrThrow({ where: { dayId, command: 'award-jars' }, orderBy: { number: 'desc' } })
    const seeds = products.map(({ table }) => (table.rule.kind === 'by-lot' ? table.rule.seed : null))
    expect(entry.detail).toMatchObject({ rule: 'by-lot', products: seeds.map((seed) => ({ seed })) })
    const [jam, pickles] = products
    expect(jam && pickles && sayDraw(jam.table)).not.toBe(pickles && sayDraw(pickles.table))
    await must(as('Ada', awardJars, { dayId }))
    expect([await awarded('jam'), await awarded('pickles')]).toEqual(first)
  })
})

/** The rounds by hand: the order as it is printed, one jar each, at most what was asked for. */
function inTurn(sealed: number, table: ShareTable): Record<string, number> {
  const order = sayDraw(table).split(': ')[1]?.split(', ') ?? []
  const asked = new Map(table.shares.map((share) => [share.householdName, share.asked]))
  const got = Object.fromEntries(order.map((name) => [name, 0]))
  let left = sealed
  while (left > 0) {
    for (const name of order) {
      if (left === 0 || (got[name] ?? 0) >= (asked.get(name) ?? 0)) continue
      got[name] = (got[name] ?? 0) + 1
      left -= 1
    }
  }
  return got
}
