import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { addPledge } from '@/lib/services/day/add-pledge'
import { answerRuleChange } from '@/lib/services/day/answer-rule-change'
import { askRuleChange } from '@/lib/services/day/ask-rule-change'
import { claimJars } from '@/lib/services/day/claim-jars'
import { closeClaims } from '@/lib/services/day/close-claims'
import { editDay } from '@/lib/services/day/edit-day'
import { setClaimWindow } from '@/lib/services/day/set-claim-window'
import { setOfferCap } from '@/lib/services/day/set-offer-cap'
import { waitForJars } from '@/lib/services/day/wait-for-jars'
import { withdrawRuleChange } from '@/lib/services/day/withdraw-rule-change'
import { removeHousehold } from '@/lib/services/group/remove-household'
import { freshDatabase } from '@/tests/support/fresh-database'
import { actorOf, ada, change, EVENING, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'
import { outcome } from '@/tests/support/two-groups'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let evening: OpenEvening

const as = (householdId: string) => actorOf('member', householdId)
const claim = (householdId: string, jars: number, { at, of = evening.jam }: { at?: string; of?: string } = {}) =>
  change(claimJars, { preparationId: of, householdId, jars }, as(householdId), at === undefined ? undefined : new Date(at))
const dayOf = () => fresh.client.day.findFirstOrThrow({ where: { id: evening.dayId } })
const setWindow = async (more: object) => saved(setClaimWindow, { dayId: evening.dayId, version: (await dayOf()).version, ...more })

beforeAll(async () => seedFernHollow(fresh.client))

beforeEach(async () => {
  evening = await openEvening({ jam: 20, pickles: 20 })
})

describe('the window for asking', () => {
  // 08:00 on the wall in New York in summer is 12:00 UTC.
  const WINDOW = { claimsOpenAt: '2027-08-20T08:00', claimsCloseAt: '2027-08-24T20:00', earlyHours: 2 }

  it('opens and closes by itself, at the moments of the kitchen’s clock', async () => {
    await setWindow(WINDOW)
    expect((await dayOf()).claimsOpenAt?.toISOString()).toBe('2027-08-20T12:00:00.000Z')
    expect(await claim('elmsway', 1, { at: '2027-08-20T11:59:59Z' })).toMatchObject({
      ok: false,
      problem: { code: 'claims-not-open', why: expect.stringContaining('Fri 20 Aug, 08:00') },
    })
    expect(outcome(await claim('elmsway', 1, { at: '2027-08-20T12:00:00Z' }))).toBe('saved')
    expect(outcome(await claim('elmsway', 2, { at: '2027-08-25T00:00:00Z' }))).toBe('saved')
    expect(outcome(await claim('elmsway', 3, { at: '2027-08-25T00:00:01Z' }))).toBe('409 claims-closed')
  })

  it('opens earlier for who promised produce or hours, and not for who promised anything else', async () => {
    await setWindow(WINDOW)
    const promise = (householdId: string, kind: string) =>
      saved(addPledge, { dayId: evening.dayId, householdId, kind, item: 'something', quantity: 2, unit: 'h' })
    await promise('brightwater', 'hours')
    await promise('copperfold', 'produce')
    await promise('elmsway', 'jars')
    const early = { at: '2027-08-20T10:00:00Z' }
    expect(outcome(await claim('brightwater', 1, early))).toBe('saved')
    expect(outcome(await claim('copperfold', 1, early))).toBe('saved')
    expect(outcome(await claim('elmsway', 1, early))).toBe('409 claims-not-open')
    expect(outcome(await claim('brightwater', 2, { at: '2027-08-20T09:59:59Z' }))).toBe('409 claims-not-open')
  })

  it('is told everything that does not fit, and needs the version it was read at', async () => {
    const { version } = await dayOf()
    const typed = { dayId: evening.dayId, version, claimsOpenAt: '2027-08-27T08:00', claimsCloseAt: '2027-08-28T08:00', earlyHours: 2 }
    expect(await change(setClaimWindow, typed)).toMatchObject({
      problem: { fields: { claimsOpenAt: [expect.any(String)], claimsCloseAt: [expect.any(String)] } },
    })
    expect(outcome(await change(setClaimWindow, { ...typed, ...WINDOW, version: version - 1 }))).toBe('409 changed-meanwhile')
    await setWindow(WINDOW)
    const edited = { ...EVENING, dayId: evening.dayId, version: version + 1, claimsCloseAt: '2027-08-20T07:00' }
    expect(await change(editDay, edited)).toMatchObject({
      ok: false,
      problem: { fields: { claimsCloseAt: [expect.stringContaining('open later')] } },
    })
  })

  it.each([
    { earlyHours: -1 },
    { earlyHours: 1.5 },
    { householdCap: 0 },
    { householdCap: 2.5 },
    { claimsOpenAt: '2027-02-30T08:00' },
    { claimsOpenAt: 'soon' },
  ])('of %j is refused before anything is read', async (typed) =>
    expect(await change(setClaimWindow, { dayId: evening.dayId, version: 1, ...typed })).toMatchObject({
      ok: false,
      problem: { status: 422 },
    }),
  )

  it('closed by two organisers at once is closed by one, and the other is told who it was', async () => {
    for (let round = 0; round < 20; round += 1) {
      const { dayId } = await openEvening({ jam: 1, pickles: 1 })
      const answers = await Promise.all(['Ada', 'Cleo', 'Gil', 'Hana'].map((name) => change(closeClaims, { dayId }, { ...ada, name })))
      expect(answers.map(outcome).sort()).toEqual([
        '409 claims-closed-already',
        '409 claims-closed-already',
        '409 claims-closed-already',
        'saved',
      ])
      const winner = ['Ada', 'Cleo', 'Gil', 'Hana'][answers.findIndex(({ ok }) => ok)]
      for (const answer of answers) if (!answer.ok) expect(answer.problem.why).toContain(`${winner} closed them`)
    }
  })

  it('closed by who began before the one that has closed them is told who it was, and nothing moves', async () => {
    const { dayId } = evening
    const close = (name: string, at: string) => change(closeClaims, { dayId }, { ...ada, name }, new Date(at))
    expect(outcome(await close('Cleo', '2027-08-20T12:00:00.020Z'))).toBe('saved')
    expect(await close('Gil', '2027-08-20T12:00:00.010Z')).toMatchObject({
      problem: { code: 'claims-closed-already', why: expect.stringContaining('Cleo closed them') },
    })
    expect(await close('Hana', '2027-08-20T12:00:00.020Z')).toMatchObject({ problem: { code: 'claims-closed-already' } })
    expect((await dayOf()).claimsCloseAt?.toISOString()).toBe('2027-08-20T12:00:00.020Z')
  })

  it('announced for later is closed by hand all the same, also after it was closed and opened again', async () => {
    const { dayId } = evening
    expect(outcome(await change(closeClaims, { dayId }, ada, new Date('2027-08-20T12:00:00Z')))).toBe('saved')
    await setWindow({ claimsCloseAt: '2027-08-24T20:00', earlyHours: 0 })
    expect(outcome(await change(closeClaims, { dayId }, ada, new Date('2027-08-21T12:00:00Z')))).toBe('saved')
    expect((await dayOf()).claimsCloseAt?.toISOString()).toBe('2027-08-21T12:00:00.000Z')
  })
})

describe('a cap for each household', () => {
  it('of one product stops who asks for more, together with what it waits for, and takes nothing away', async () => {
    expect(outcome(await claim('alderby', 9))).toBe('saved')
    await saved(setOfferCap, { preparationId: evening.jam, householdCap: 6 })
    expect(await claim('elmsway', 7)).toMatchObject({ ok: false, problem: { code: 'over-cap', instead: 'Ask for at most 6.' } })
    expect(outcome(await claim('alderby', 8))).toBe('saved') // fewer than before, though more than the cap
    expect(outcome(await claim('alderby', 9))).toBe('409 over-cap')
    await claim('brightwater', 6)
    await claim('copperfold', 6)
    expect(outcome(await change(waitForJars, { preparationId: evening.jam, householdId: 'elmsway', jars: 7 }, as('elmsway')))).toBe(
      '409 over-cap',
    )
    expect(outcome(await change(waitForJars, { preparationId: evening.jam, householdId: 'elmsway', jars: 6 }, as('elmsway')))).toBe('saved')
    expect(outcome(await claim('elmsway', 1))).toBe('409 over-cap') // waits for 6 already
  })

  it('of the day counts all products, also when both are asked for at the same moment', async () => {
    await setWindow({ householdCap: 8 })
    expect(outcome(await claim('alderby', 5))).toBe('saved')
    expect(await claim('alderby', 4, { of: evening.pickles })).toMatchObject({
      ok: false,
      problem: { code: 'over-cap', instead: 'Ask for at most 3.' },
    })
    for (let round = 0; round < 20; round += 1) {
      await Promise.all([
        claim('elmsway', 5),
        claim('elmsway', 5, { of: evening.pickles }),
        claim('elmsway', 6),
        claim('elmsway', 6, { of: evening.pickles }),
      ])
      const { _sum } = await fresh.client.claim.aggregate({
        where: { householdId: 'elmsway', preparation: { dayId: evening.dayId } },
        _sum: { jars: true },
      })
      expect(_sum.jars).toBeLessThanOrEqual(8)
      await claim('elmsway', 0)
      await claim('elmsway', 0, { of: evening.pickles })
    }
  })
})

describe('the rule of sharing, once households ask for jars', () => {
  const edit = async (shareRule: string) =>
    change(editDay, { ...EVENING, dayId: evening.dayId, version: (await dayOf()).version, shareRule })
  const ask = (shareRule = 'equal') => change(askRuleChange, { dayId: evening.dayId, shareRule })
  const answer = (ruleChangeId: unknown, householdId: string, said = 'agree') =>
    change(answerRuleChange, { ruleChangeId, householdId, answer: said }, as(householdId))

  it('stays, whatever the organiser types; without claims it is theirs to choose', async () => {
    expect(outcome(await edit('one-each-first'))).toBe('saved')
    await claim('elmsway', 2)
    expect(await edit('equal')).toMatchObject({
      ok: false,
      problem: { code: 'rule-stays', instead: expect.stringContaining('Ask all of them') },
    })
    expect(outcome(await edit('one-each-first'))).toBe('saved')
  })

  it('changes when every household that asks has agreed, and not before', async () => {
    await claim('elmsway', 2)
    await claim('fennick', 2)
    const asked = await saved(askRuleChange, { dayId: evening.dayId, shareRule: 'equal' })
    expect(asked).toMatchObject({ state: 'asked', toAnswer: 2 })
    expect(await answer(asked.ruleChangeId, 'elmsway')).toMatchObject({ value: { reply: { state: 'asked', toAnswer: 1 } } })
    expect(outcome(await edit('equal'))).toBe('409 rule-stays')
    expect(outcome(await answer(asked.ruleChangeId, 'brightwater'))).toBe('409 no-claim')
    await claim('brightwater', 1) // who comes later is asked too
    expect(await answer(asked.ruleChangeId, 'fennick')).toMatchObject({ value: { reply: { state: 'asked', toAnswer: 1 } } })
    expect((await dayOf()).shareRule).toBe('in-proportion')
    expect(await answer(asked.ruleChangeId, 'brightwater')).toMatchObject({ value: { reply: { state: 'made', toAnswer: 0 } } })
    expect((await dayOf()).shareRule).toBe('equal')
  })

  it('stays at one “no”, and when the question is taken back; then it may be asked again', async () => {
    await claim('elmsway', 2)
    const first = await saved(askRuleChange, { dayId: evening.dayId, shareRule: 'equal' })
    expect(outcome(await ask('one-each-first'))).toBe('409 rule-change-open')
    expect(outcome(await ask())).toBe('409 rule-change-open')
    expect(await answer(first.ruleChangeId, 'elmsway', 'refuse')).toMatchObject({ value: { reply: { state: 'refused' } } })
    expect(outcome(await answer(first.ruleChangeId, 'elmsway'))).toBe('409 rule-change-settled')
    const second = await saved(askRuleChange, { dayId: evening.dayId, shareRule: 'equal' })
    await saved(withdrawRuleChange, { ruleChangeId: second.ruleChangeId })
    expect(outcome(await answer(second.ruleChangeId, 'elmsway'))).toBe('409 rule-change-settled')
    expect((await dayOf()).shareRule).toBe('in-proportion')
  })

  it('is made when the only one who had not answered gives up its jars and it is asked once more', async () => {
    await claim('elmsway', 2)
    await claim('fennick', 2)
    const asked = await saved(askRuleChange, { dayId: evening.dayId, shareRule: 'equal' })
    await answer(asked.ruleChangeId, 'elmsway')
    await claim('fennick', 0)
    expect(await ask()).toMatchObject({ value: { reply: { state: 'made' } } })
    expect((await dayOf()).shareRule).toBe('equal')
  })

  it('is not changed by an agreement that nobody can take back or forge', async () => {
    const app = fresh.client.$executeRaw`DELETE FROM rule_agreement`
    await expect(app).rejects.toThrow(/permission denied/)
  })

  it('is settled once when all answer at the same moment, in twenty rounds', async () => {
    const households = ['alderby', 'brightwater', 'elmsway', 'fennick'] as const
    for (const householdId of households) await claim(householdId, 1)
    for (let round = 0; round < 20; round += 1) {
      const to = round % 2 === 0 ? 'equal' : 'in-proportion'
      const asked = await saved(askRuleChange, { dayId: evening.dayId, shareRule: to })
      const answers = await Promise.all(households.map((householdId) => answer(asked.ruleChangeId, householdId)))
      expect(answers.filter((each) => each.ok && each.value.reply.state === 'made')).toHaveLength(1)
      expect((await dayOf()).shareRule).toBe(to)
    }
  })
})

describe('a household that leaves', () => {
  const leave = (householdId: string, actor = ada) => change(removeHousehold, { householdId }, actor)

  it('is kept while it asks for jars, with what to do; then it goes, and asks for nothing any more', async () => {
    await fresh.client.household.create({ data: { groupId, id: 'goer', name: 'Goer' } })
    await fresh.client.person.create({ data: { groupId, id: 'goer-1', householdId: 'goer', name: 'Nils', role: 'member' } })
    await change(claimJars, { preparationId: evening.jam, householdId: 'goer', jars: 3 })
    expect(await leave('goer')).toMatchObject({
      ok: false,
      problem: { code: 'jars-claimed', why: expect.stringContaining('3 jars'), instead: expect.stringContaining('Give the jars up') },
    })
    await change(claimJars, { preparationId: evening.jam, householdId: 'goer', jars: 0 })
    expect(outcome(await leave('goer'))).toBe('saved')
    expect(outcome(await leave('goer'))).toBe('409 left-already')
    expect(outcome(await change(claimJars, { preparationId: evening.jam, householdId: 'goer', jars: 1 }))).toBe('404 not-found')
    expect(await fresh.client.person.findFirstOrThrow({ where: { id: 'goer-1' } })).toMatchObject({ active: false })
  })

  it('is kept while jars are its share and not handed over', async () => {
    await fresh.client.household.create({ data: { groupId, id: 'sharer', name: 'Sharer' } })
    const award = { groupId, id: 'award-1', preparationId: evening.jam, householdId: 'sharer', asked: 2, jars: 2, quota: '', reason: '' }
    await fresh.client.award.create({ data: award })
    expect(await leave('sharer')).toMatchObject({
      ok: false,
      problem: { code: 'jars-awarded', instead: expect.stringContaining('Hand them over') },
    })
    await fresh.client.award.update({ where: { groupId_id: { groupId, id: 'award-1' } }, data: { handedOverAt: new Date() } })
    expect(outcome(await leave('sharer'))).toBe('saved')
  })

  it('is never one’s own, and never found by another group', async () => {
    expect(outcome(await leave('alderby'))).toBe('409 own-household')
    expect(outcome(await leave('elmsway', actorOf('organiser', 'x', 'other-group')))).toBe('404 not-found')
  })

  it('and a claim for it at the same moment never both succeed, in twenty rounds', async () => {
    for (let round = 0; round < 20; round += 1) {
      const id = `racer-${round}`
      await fresh.client.household.create({ data: { groupId, id, name: `Racer ${round}` } })
      const ask = () => change(claimJars, { preparationId: evening.jam, householdId: id, jars: 1 })
      const [left, ...asked] = await Promise.all([leave(id), ask(), ask(), ask()])
      const { leftAt, claims } = await fresh.client.household.findFirstOrThrow({ where: { id }, include: { claims: true } })
      const jars = claims.reduce((sum, each) => sum + each.jars, 0)
      expect([leftAt !== null, jars > 0]).toEqual([left.ok, asked.some(({ ok }) => ok)])
      expect(leftAt !== null && jars > 0).toBe(false)
      await ask().then(() => change(claimJars, { preparationId: evening.jam, householdId: id, jars: 0 }))
    }
  })
})
