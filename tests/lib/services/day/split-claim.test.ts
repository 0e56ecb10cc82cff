import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { answerSplit } from '@/lib/services/day/answer-split'
import { claimJars } from '@/lib/services/day/claim-jars'
import { closeClaims } from '@/lib/services/day/close-claims'
import { offerSplit } from '@/lib/services/day/offer-split'
import { setOfferCap } from '@/lib/services/day/set-offer-cap'
import { withdrawSplit } from '@/lib/services/day/withdraw-split'
import { freshDatabase } from '@/tests/support/fresh-database'
import { actorOf, change, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
let evening: OpenEvening

const as = (householdId: string) => actorOf('member', householdId)
const claim = (householdId: string, jars: number) => saved(claimJars, { preparationId: evening.jam, householdId, jars })
const offer = (householdId: string, toHouseholdId: string, jars: number, preparationId = evening.jam) =>
  change(offerSplit, { preparationId, householdId, toHouseholdId, jars }, as(householdId))
const answer = (splitId: unknown, householdId: string, said = 'accept') =>
  change(answerSplit, { splitId, householdId, answer: said }, as(householdId))
const offered = async (...args: Parameters<typeof offer>) => {
  const done = await offer(...args)
  if (!done.ok) throw new Error(JSON.stringify(done.problem))
  return String(done.value.reply.splitId)
}
async function jarsOf(...households: string[]) {
  const claims = await fresh.client.claim.findMany({ where: { preparationId: evening.jam } })
  const { claimed } = await fresh.client.preparation.findFirstOrThrow({ where: { id: evening.jam } })
  expect(claims.reduce((sum, { jars }) => sum + jars, 0)).toBe(claimed)
  return households.map((id) => claims.find(({ householdId }) => householdId === id)?.jars ?? 0)
}

beforeAll(async () => seedFernHollow(fresh.client))

beforeEach(async () => {
  evening = await openEvening({ jam: 20, pickles: 8 })
  await claim('alderby', 8)
})

describe('a claim split with another household', () => {
  it('moves when the other takes it, and not before; the sum stays', async () => {
    const id = await offered('alderby', 'elmsway', 3)
    expect(await jarsOf('alderby', 'elmsway')).toEqual([8, 0])
    expect(await answer(id, 'elmsway')).toMatchObject({ ok: true, value: { reply: { state: 'accepted', jars: 3 } } })
    expect(await jarsOf('alderby', 'elmsway')).toEqual([5, 3])
    expect(await answer(id, 'elmsway')).toMatchObject({ ok: false, problem: { code: 'split-answered' } })
  })

  it('may be declined, or taken back, and stays where it was', async () => {
    const [first, second] = [await offered('alderby', 'elmsway', 3), await offered('alderby', 'fennick', 2)]
    expect(await answer(first, 'elmsway', 'decline')).toMatchObject({ ok: true })
    await saved(withdrawSplit, { splitId: second, householdId: 'alderby' })
    expect(await answer(second, 'fennick')).toMatchObject({ ok: false, problem: { code: 'split-answered' } })
    expect(await jarsOf('alderby', 'elmsway', 'fennick')).toEqual([8, 0, 0])
  })

  it('is answered by the household that it was offered to, and by nobody else', async () => {
    const id = await offered('alderby', 'elmsway', 3)
    expect(await answer(id, 'fennick')).toMatchObject({ ok: false, problem: { status: 404 } })
    expect(await change(answerSplit, { splitId: id, householdId: 'elmsway', answer: 'accept' }, as('fennick'))).toMatchObject({
      ok: false,
      problem: { status: 403 },
    })
    expect(await change(withdrawSplit, { splitId: id, householdId: 'elmsway' }, as('elmsway'))).toMatchObject({
      ok: false,
      problem: { status: 404 },
    })
  })

  it('never offers more than there is, to oneself, twice, or what the other must not have', async () => {
    expect(await offer('alderby', 'elmsway', 9)).toMatchObject({ ok: false, problem: { fields: { jars: ['At most 8 of your 8.'] } } })
    expect(await offer('alderby', 'alderby', 1)).toMatchObject({ ok: false, problem: { status: 422 } })
    await offered('alderby', 'elmsway', 6)
    expect(await offer('alderby', 'elmsway', 1)).toMatchObject({ ok: false, problem: { code: 'split-open' } })
    expect(await offer('alderby', 'fennick', 3)).toMatchObject({ ok: false, problem: { fields: { jars: ['At most 2 of your 8.'] } } })
    await saved(claimJars, { preparationId: evening.pickles, householdId: 'alderby', jars: 2 })
    const refused = await offer('alderby', 'dunmarrow', 1, evening.pickles)
    expect(refused).toMatchObject({ ok: false, problem: { code: 'split-allergen' } })
    expect(JSON.stringify(refused)).not.toMatch(/mustard|Esme/) // what is on another household's list is not for this one
  })

  it('is refused when it was given up meanwhile, or would pass the cap', async () => {
    const id = await offered('alderby', 'elmsway', 5)
    await claim('alderby', 4)
    expect(await answer(id, 'elmsway')).toMatchObject({ ok: false, problem: { code: 'split-too-large' } })
    await claim('alderby', 8)
    await saved(setOfferCap, { preparationId: evening.jam, householdCap: 4 })
    expect(await answer(id, 'elmsway')).toMatchObject({ ok: false, problem: { code: 'over-cap' } })
    expect(await jarsOf('alderby', 'elmsway')).toEqual([8, 0])
  })

  it('is possible after the claims have closed, since no sum changes', async () => {
    await saved(closeClaims, { dayId: evening.dayId })
    expect(await answer(await offered('alderby', 'elmsway', 3), 'elmsway')).toMatchObject({ ok: true })
    expect(await jarsOf('alderby', 'elmsway')).toEqual([5, 3])
  })

  it.each([0, -1, 0.5, '2e0', null])('of %j jars is refused before anything is read', async (jars) =>
    expect(await change(offerSplit, { preparationId: evening.jam, householdId: 'alderby', toHouseholdId: 'elmsway', jars })).toMatchObject({
      ok: false,
      problem: { status: 422 },
    }),
  )

  it('conserves jars while two take, one gives up and one takes back at the same moment, in twenty rounds', async () => {
    for (let round = 0; round < 20; round += 1) {
      await claim('alderby', 8)
      const [first, second] = [await offered('alderby', 'elmsway', 4), await offered('alderby', 'fennick', 4)]
      await Promise.all([
        answer(first, 'elmsway'),
        answer(second, 'fennick'),
        change(claimJars, { preparationId: evening.jam, householdId: 'alderby', jars: round % 8 }, as('alderby')),
        change(withdrawSplit, { splitId: second, householdId: 'alderby' }, as('alderby')),
      ])
      const jars = await jarsOf('alderby', 'elmsway', 'fennick')
      expect(Math.min(...jars)).toBeGreaterThanOrEqual(0)
      await claim('alderby', 0)
      await claim('elmsway', 0)
      await claim('fennick', 0)
      await fresh.client.claimSplit.updateMany({ where: { state: 'offered' }, data: { state: 'withdrawn', answeredAt: new Date() } })
    }
  })
})
