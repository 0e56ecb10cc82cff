import { beforeAll, describe, expect, it } from 'vitest'
import { changeOffer } from '@/lib/services/day/change-offer'
import { claimJars } from '@/lib/services/day/claim-jars'
import { closeClaims } from '@/lib/services/day/close-claims'
import { freshDatabase } from '@/tests/support/fresh-database'
import { actorOf, change, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
let evening: OpenEvening
const claim = (householdId: string, jars: number, preparationId = evening.jam, actor = actorOf('member', householdId)) =>
  change(claimJars, { preparationId, householdId, jars }, actor)
const sums = async (id: string) => {
  const { offered, claimed } = await fresh.client.preparation.findFirstOrThrow({ where: { id } })
  const all = await fresh.client.claim.aggregate({ where: { preparationId: id }, _sum: { jars: true } })
  return { offered, claimed, ledger: all._sum.jars ?? 0 }
}

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  evening = await openEvening()
})

describe('a claim', () => {
  it('is kept, may grow or shrink, and 0 gives it up', async () => {
    for (const jars of [8, 10, 3, 0]) {
      expect(await claim('dunmarrow', jars)).toMatchObject({ ok: true, value: { reply: { jars, claimed: jars, offered: 48 } } })
      expect(await sums(evening.jam)).toEqual({ offered: 48, claimed: jars, ledger: jars })
    }
  })

  it('larger than what is left is refused with what is left, and nothing is written', async () => {
    await claim('alderby', 40)
    const refused = await claim('elmsway', 9)
    expect(refused).toMatchObject({ ok: false, problem: { code: 'more-than-offered', status: 409, instead: 'Ask for at most 8.' } })
    expect(await sums(evening.jam)).toEqual({ offered: 48, claimed: 40, ledger: 40 })
    expect(await claim('elmsway', 8)).toMatchObject({ ok: true })
    await claim('alderby', 0)
    await claim('elmsway', 0)
  })

  it('of a product with somebody’s allergen is refused, and the household hears whose', async () => {
    const refused = await claim('dunmarrow', 1, evening.pickles)
    expect(refused).toMatchObject({
      ok: false,
      problem: {
        code: 'allergen',
        what: expect.stringContaining('not for this household'),
        why: expect.stringContaining('Esme’s mustard allergy'),
      },
    })
    expect(await sums(evening.pickles)).toEqual({ offered: 32, claimed: 0, ledger: 0 })
  })

  it('is for one’s own household only, unless one is the organiser', async () => {
    const foreign = await change(claimJars, { preparationId: evening.jam, householdId: 'elmsway', jars: 1 }, actorOf('member', 'alderby'))
    expect(foreign).toMatchObject({ ok: false, problem: { status: 403 } })
    expect(await claim('elmsway', 2, evening.jam, actorOf('organiser', 'alderby'))).toMatchObject({ ok: true })
    expect(await claim('elmsway', 0)).toMatchObject({ ok: true })
  })

  it('on another group’s product, or for another group’s household, is not found', async () => {
    const stranger = actorOf('organiser', 'x', 'other-group')
    const theirs = { preparationId: evening.jam, householdId: 'x', jars: 1 }
    expect(await change(claimJars, theirs, stranger)).toMatchObject({ ok: false, problem: { status: 404 } })
    expect(await change(claimJars, { ...theirs, householdId: 'nobody' })).toMatchObject({ ok: false, problem: { status: 404 } })
  })

  it.each([-1, 1.5, 1001, '9e9', 'many', null, { not: '' }, [3]])('of %j jars is refused before anything is read', async (jars) => {
    expect(await change(claimJars, { preparationId: evening.jam, householdId: 'elmsway', jars })).toMatchObject({
      ok: false,
      problem: { status: 422 },
    })
  })

  it('never takes the sum over the offer, four callers at a time in twenty rounds', async () => {
    const callers = ['alderby', 'brightwater', 'copperfold', 'elmsway'] as const
    for (let round = 0; round < 20; round += 1) {
      const answers = await Promise.all(callers.map((householdId, place) => claim(householdId, 13 + ((round + place) % 5))))
      expect(answers.every((answer) => answer.ok || answer.problem.code === 'more-than-offered')).toBe(true)
      const { offered, claimed, ledger } = await sums(evening.jam)
      expect(claimed).toBeLessThanOrEqual(offered)
      expect(ledger).toBe(claimed)
      await Promise.all(callers.map((householdId) => claim(householdId, 0)))
    }
    expect(await sums(evening.jam)).toEqual({ offered: 48, claimed: 0, ledger: 0 })
  })

  it('and an offer that shrinks at the same moment never cross', async () => {
    for (let round = 0; round < 20; round += 1) {
      await saved(changeOffer, { preparationId: evening.jam, offered: 48 })
      await Promise.all([
        claim('alderby', 30),
        claim('elmsway', 18),
        change(changeOffer, { preparationId: evening.jam, offered: 20 + round }),
      ])
      const { offered, claimed, ledger } = await sums(evening.jam)
      expect(claimed).toBeLessThanOrEqual(offered)
      expect(ledger).toBe(claimed)
      await Promise.all([claim('alderby', 0), claim('elmsway', 0)])
    }
  })

  it('after the announced moment, or after the organiser closed the claims, is refused', async () => {
    const late = new Date('2027-08-25T12:00:00Z')
    const input = { preparationId: evening.jam, householdId: 'elmsway', jars: 1 }
    expect(await change(claimJars, input, undefined, late)).toMatchObject({ ok: false, problem: { code: 'claims-closed', status: 409 } })
    await saved(closeClaims, { dayId: evening.dayId })
    expect(await change(claimJars, input)).toMatchObject({ ok: false, problem: { code: 'claims-closed' } })
  })
})
