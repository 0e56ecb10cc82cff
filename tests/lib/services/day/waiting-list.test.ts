import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { firstBrokenEntry } from '@/lib/queries/first-broken-entry'
import { changeOffer } from '@/lib/services/day/change-offer'
import { claimJars } from '@/lib/services/day/claim-jars'
import { closeClaims } from '@/lib/services/day/close-claims'
import { waitForJars } from '@/lib/services/day/wait-for-jars'
import { removeHousehold } from '@/lib/services/group/remove-household'
import { freshDatabase } from '@/tests/support/fresh-database'
import { actorOf, change, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let evening: OpenEvening

const as = (householdId: string) => actorOf('member', householdId)
const claim = (householdId: string, jars: number) => change(claimJars, { preparationId: evening.jam, householdId, jars }, as(householdId))
const wait = (householdId: string, jars: number, takesFewer = 'yes', preparationId = evening.jam) =>
  change(waitForJars, { preparationId, householdId, jars, takesFewer }, as(householdId))

/** Everything that must always add up, and what each household has and waits for. */
async function standing() {
  const preparation = await fresh.client.preparation.findFirstOrThrow({ where: { id: evening.jam } })
  const claims = await fresh.client.claim.findMany({ where: { preparationId: evening.jam } })
  const list = await fresh.client.waiting.findMany({ where: { preparationId: evening.jam }, orderBy: { place: 'asc' } })
  const sum = (rows: readonly { jars: number }[]) => rows.reduce((total, { jars }) => total + jars, 0)
  expect(sum(claims)).toBe(preparation.claimed)
  expect(sum(list)).toBe(preparation.waiting)
  expect(preparation.claimed).toBeLessThanOrEqual(preparation.offered)
  const has = Object.fromEntries(claims.filter(({ jars }) => jars > 0).map(({ householdId, jars }) => [householdId, jars]))
  return { has, waits: list.map(({ householdId, jars }) => [householdId, jars]) }
}

beforeAll(async () => seedFernHollow(fresh.client))

beforeEach(async () => {
  evening = await openEvening({ jam: 10, pickles: 8 })
})

describe('the waiting list', () => {
  it('takes wishes in the order in which they came, and moves when jars are given up', async () => {
    await claim('alderby', 10)
    await wait('copperfold', 3)
    await wait('brightwater', 4)
    expect(await standing()).toEqual({
      has: { alderby: 10 },
      waits: [
        ['copperfold', 3],
        ['brightwater', 4],
      ],
    })
    expect(await claim('alderby', 5)).toMatchObject({ ok: true, value: { reply: { jars: 5, claimed: 10 } } })
    expect(await standing()).toEqual({ has: { alderby: 5, copperfold: 3, brightwater: 2 }, waits: [['brightwater', 2]] })
  })

  it('passes over who wants all or nothing, who keeps the place', async () => {
    await claim('alderby', 10)
    await wait('copperfold', 4, 'no')
    await wait('brightwater', 1)
    await claim('alderby', 8)
    expect(await standing()).toEqual({ has: { alderby: 8, brightwater: 1 }, waits: [['copperfold', 4]] })
    await claim('alderby', 5)
    expect(await standing()).toEqual({ has: { alderby: 5, brightwater: 1, copperfold: 4 }, waits: [] })
  })

  it('moves when the offer grows, also after the claims have closed', async () => {
    await claim('alderby', 10)
    await wait('copperfold', 3)
    await saved(closeClaims, { dayId: evening.dayId })
    expect(await saved(changeOffer, { preparationId: evening.jam, offered: 12 })).toMatchObject({ movedUp: 2 })
    expect(await standing()).toEqual({ has: { alderby: 10, copperfold: 2 }, waits: [['copperfold', 1]] })
  })

  it('gives at once what is free, and only the rest waits', async () => {
    await claim('alderby', 8)
    expect(await wait('copperfold', 5)).toMatchObject({ ok: true, value: { reply: { got: 2, waits: 3, place: 1 } } })
    expect(await standing()).toEqual({ has: { alderby: 8, copperfold: 2 }, waits: [['copperfold', 3]] })
  })

  it('keeps the place of who wishes for fewer; who wishes for more asks anew, at the end; 0 leaves', async () => {
    await claim('alderby', 10)
    await wait('copperfold', 3)
    await wait('brightwater', 2)
    await wait('copperfold', 1)
    expect((await standing()).waits).toEqual([
      ['copperfold', 1],
      ['brightwater', 2],
    ])
    await wait('copperfold', 4)
    expect((await standing()).waits).toEqual([
      ['brightwater', 2],
      ['copperfold', 4],
    ])
    await wait('brightwater', 0)
    expect((await standing()).waits).toEqual([['copperfold', 4]])
  })

  it('gives no jar past the list to somebody who comes later', async () => {
    await claim('alderby', 10)
    await wait('copperfold', 3)
    await claim('alderby', 9)
    expect(await claim('elmsway', 1)).toMatchObject({
      ok: false,
      problem: { code: 'more-than-offered', instead: expect.stringContaining('waiting list') },
    })
  })

  it('writes each move into the history of the day, in the name of who set it off', async () => {
    await claim('alderby', 10)
    await wait('copperfold', 3)
    await claim('alderby', 6)
    const moved = await fresh.client.history.findMany({
      where: { groupId, dayId: evening.dayId, command: 'claim-jars' },
      orderBy: { number: 'desc' },
      take: 1,
    })
    expect(moved[0]).toMatchObject({
      detail: { householdId: 'copperfold', jars: 3, before: 0, fromList: 3 },
      actorName: 'u-member-alderby',
    })
    expect(await firstBrokenEntry(groupId)).toBeNull()
  })

  it('passes over a household whose list names the product by now', async () => {
    await saved(claimJars, { preparationId: evening.pickles, householdId: 'alderby', jars: 8 })
    await wait('elmsway', 2, 'yes', evening.pickles)
    await wait('fennick', 1, 'yes', evening.pickles)
    await fresh.client.household.update({ where: { groupId_id: { groupId, id: 'elmsway' } }, data: { allergens: ['mustard'] } })
    await saved(claimJars, { preparationId: evening.pickles, householdId: 'alderby', jars: 5 })
    const claims = await fresh.client.claim.findMany({
      where: { preparationId: evening.pickles, jars: { gt: 0 } },
      orderBy: { householdId: 'asc' },
    })
    expect(claims.map(({ householdId, jars }) => [householdId, jars])).toEqual([
      ['alderby', 5],
      ['fennick', 1],
    ])
    await fresh.client.household.update({ where: { groupId_id: { groupId, id: 'elmsway' } }, data: { allergens: [] } })
  })

  it('loses a household that leaves', async () => {
    await fresh.client.household.create({ data: { groupId, id: 'goer', name: `Goer ${evening.dayId}` } })
    await claim('alderby', 10)
    await change(waitForJars, { preparationId: evening.jam, householdId: 'goer', jars: 4 })
    await wait('brightwater', 2)
    await saved(removeHousehold, { householdId: 'goer' })
    expect((await standing()).waits).toEqual([['brightwater', 2]])
    await fresh.client.household.update({
      where: { groupId_id: { groupId, id: 'goer' } },
      data: { name: `Gone ${evening.dayId}`, leftAt: null },
    })
    await fresh.client.household.delete({ where: { groupId_id: { groupId, id: 'goer' } } })
  })

  it.each([-1, 0.5, 1001, 'all', null])('of %j jars is refused before anything is read', async (jars) =>
    expect(await change(waitForJars, { preparationId: evening.jam, householdId: 'elmsway', jars })).toMatchObject({
      ok: false,
      problem: { status: 422 },
    }),
  )

  it('always adds up, with four households that claim, give up and wait at the same moment in twenty rounds', async () => {
    const callers = ['alderby', 'brightwater', 'copperfold', 'elmsway'] as const
    for (let round = 0; round < 20; round += 1) {
      const answers = await Promise.all(
        callers.map((householdId, place) =>
          (round + place) % 2 === 0
            ? claim(householdId, (round * 3 + place * 5) % 8)
            : wait(householdId, (round + place * 2) % 5, place % 2 === 0 ? 'yes' : 'no'),
        ),
      )
      expect(
        answers.map((answer) => answer.ok || answer.problem.code).filter((said) => said !== true && said !== 'more-than-offered'),
      ).toEqual([])
      const { waits } = await standing()
      const { offered, claimed } = await fresh.client.preparation.findFirstOrThrow({ where: { id: evening.jam } })
      const list = await fresh.client.waiting.findMany({ where: { preparationId: evening.jam } })
      // Nobody waits for what is free.
      for (const wish of list)
        expect(wish.takesFewer ? offered - claimed : Math.max(0, offered - claimed - wish.jars + 1), JSON.stringify(waits)).toBe(0)
    }
    expect(await firstBrokenEntry(groupId)).toBeNull()
  })
})
