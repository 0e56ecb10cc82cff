import { beforeAll, describe, expect, it } from 'vitest'
import { dayForecast } from '@/lib/queries/day-forecast'
import { addPledge } from '@/lib/services/day/add-pledge'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { freshDatabase } from '../../support/fresh-database'
import { change, claimAll, type OpenEvening, openEvening, saved, seedFernHollow } from '../../support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let evening: OpenEvening

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  evening = await openEvening()
  await claimAll(evening)
})

const jam = async () => {
  const found = (await dayForecast(groupId, evening.dayId)).get(evening.jam)
  if (!found) throw new Error('no forecast of the jam')
  return found
}

describe('the forecast of a day', () => {
  it('follows the plums from the plan to the promise to what was weighed in less culls', async () => {
    const plan = await jam()
    expect(plan).toMatchObject({ basis: 'plan', claimed: 48, produce: null })

    const { dayId } = evening
    const pledge = { dayId, householdId: 'copperfold', kind: 'produce', item: 'plums', quantity: '5', unit: 'lb' }
    const { pledgeId } = await saved(addPledge, pledge)
    const needed = Number((await jam()).produce?.needed)
    expect(await jam()).toMatchObject({ basis: 'promised', produce: { promised: 5, outstanding: 5, came: 0 } })

    await fresh.client.purchase.create({
      data: {
        groupId,
        id: 'plums',
        dayId,
        item: 'plums',
        packs: 2,
        pack: '20 lb box',
        costMinor: 4000,
        householdId: 'alderby',
        pool: 'jam',
      },
    })
    expect(await jam()).toMatchObject({ basis: 'promised', now: plan.now, produce: { promised: 45, outstanding: 45, forThis: needed } })

    await saved(receiveIngredients, { dayId, pledgeId, quantity: 6, culled: 1, condition: 'ripe' })
    expect(await jam()).toMatchObject({ basis: 'weighed', produce: { came: 6, culled: 1, outstanding: 40, usable: 45 } })
    await saved(receiveIngredients, { dayId, item: 'plums', quantity: 4, unit: 'lb', source: 'Market' })
    const short = await jam()
    expect(short.produce).toMatchObject({ promised: 45, came: 10, culled: 1, outstanding: 0, usable: 9 })
    expect(short.now.typical).toBeLessThan(plan.now.typical)
    expect(short.chanceOfClaims).toBe(0)
  })

  it('takes no more out of a delivery than came', async () => {
    const lot = { dayId: evening.dayId, item: 'plums', quantity: 3, unit: 'lb', source: 'Market' }
    const answer = await change(receiveIngredients, { ...lot, culled: 4 })
    expect(answer.ok ? {} : answer.problem.fields).toEqual({ culled: ['No more can be sorted out than came.'] })
    expect((await change(receiveIngredients, { ...lot, culled: -1 })).ok).toBe(false)
    await expect(fresh.client.$executeRaw`UPDATE ingredient_lot SET culled = quantity + 1 WHERE group_id = ${groupId}`).rejects.toThrow(
      /ingredient_lot_culled/,
    )
  })

  it('holds nothing of another group', async () => {
    expect((await dayForecast('another-group', evening.dayId)).size).toBe(0)
  })
})
