import { randomUUID } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import fc from 'fast-check'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { runCommand } from '@/lib/commands/run-command'
import type { ShortTap } from '@/lib/commands/short-way'
import { firstBrokenEntry } from '@/lib/queries/first-broken-entry'
import { claimJars } from '@/lib/services/day/claim-jars'
import { claimTheShortWay } from '@/lib/services/day/claim-short-way'
import { setClaimWindow } from '@/lib/services/day/set-claim-window'
import { setOfferCap } from '@/lib/services/day/set-offer-cap'
import { waitForJars } from '@/lib/services/day/wait-for-jars'
import type { Actor, Role } from '@/shared/access/actor'
import { rolesFor } from '@/shared/access/policy'
import { freshDatabase } from '@/tests/support/fresh-database'
import { change, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let evening: OpenEvening

/** Names that JSON writes with care: the hash of an entry must come out the same in SQL and here. */
const ODD_NAME = 'Zoë "Quill" \\ O’Hara \u0007\u007f \u2028 \ud83c\udf51'

const asker = (role: Role, householdId: string): Actor => {
  const userId = `asker-${role}-${householdId}`
  return { userId, personId: userId, groupId, householdId, name: ODD_NAME, role }
}
const organiser = asker('organiser', 'alderby')
const member = asker('member', 'elmsway')
const visitor = asker('visitor', 'elmsway')

/** A moment that a busy machine still meets: the short way is not taken a second after its `now`. */
const soon = () => new Date(Date.now() + 60_000)

const tap = (input: object, by: Actor = organiser, more: Partial<ShortTap> = {}): ShortTap => ({
  ...{ key: randomUUID(), userId: by.userId, sessionVersion: 1, groupId, roles: rolesFor('claim-jars'), mostAMinute: 100_000 },
  ...{ input, now: soon(), ...more },
})
const jam = (householdId: string, jars: number, preparationId = evening.jam) => ({ preparationId, householdId, jars })
const short = (householdId: string, jars: number, by?: Actor, more?: Partial<ShortTap>) =>
  claimTheShortWay(tap(jam(householdId, jars), by, more))

/** Everything that a claim writes, without ids and moments that differ from tap to tap. */
async function written() {
  const [claims, preparations, history, keys, windows] = await Promise.all([
    fresh.client.claim.findMany({
      orderBy: [{ preparationId: 'asc' }, { householdId: 'asc' }],
      select: { preparationId: true, householdId: true, jars: true },
    }),
    fresh.client.preparation.findMany({ orderBy: { id: 'asc' }, select: { id: true, claimed: true, waiting: true } }),
    fresh.client.history.count(),
    fresh.client.idempotentRequest.count(),
    fresh.client.rateWindow.findMany({ orderBy: { key: 'asc' } }),
  ])
  return { claims, preparations, history, keys, windows }
}

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  for (const { userId, role, householdId } of [organiser, member, visitor]) {
    await fresh.client.user.create({ data: { id: userId, email: `${userId}@example.org` } })
    await fresh.client.person.create({ data: { groupId, id: userId, userId, householdId, name: ODD_NAME, role } })
  }
})

/** The notices of the last claims go out after them. */
afterAll(() => sleep(300))

beforeEach(async () => {
  evening = await openEvening({ jam: 20, pickles: 20 })
})

describe('a plain claim, the short way', () => {
  it('writes and answers what the long way does, claim for claim', async () => {
    const twin = await openEvening({ jam: 20, pickles: 20 })
    const households = ['alderby', 'brightwater', 'copperfold', 'elmsway'] as const
    const someClaims = fc.array(fc.tuple(fc.constantFrom(...households), fc.integer({ min: 0, max: 9 })), { minLength: 1, maxLength: 6 })
    const plain = ({ claimId: _, preparationId: __, ...reply }: Record<string, unknown>) => reply
    await fc.assert(
      fc.asyncProperty(someClaims, async (claims) => {
        for (const [householdId, jars] of claims) {
          const at = soon()
          const long = await change(claimJars, jam(householdId, jars, twin.jam), organiser, at)
          const reply = await short(householdId, jars, organiser, { now: at })
          expect(reply && plain(reply)).toEqual(long.ok ? plain(long.value.reply) : null)
        }
        const linesOf = async (dayId: string) => {
          const lines = await fresh.client.history.findMany({ where: { dayId, command: 'claim-jars' }, orderBy: { number: 'asc' } })
          return lines.map(({ detail, subject, actorId, actorName, recordedAt, command }) => {
            const { preparationId: _, ...rest } = detail as Record<string, unknown>
            return { rest, subject: subject.split(' ')[0], actorId, actorName, recordedAt, command }
          })
        }
        expect(await linesOf(evening.dayId)).toEqual(await linesOf(twin.dayId))
      }),
      { numRuns: 12 },
    )
    expect(await firstBrokenEntry(groupId)).toBeNull()
  })

  it('that waited past the turn of a minute counts in the minute that has begun', async () => {
    const now = soon()
    const nextMinute = new Date((Math.floor(now.getTime() / 60_000) + 1) * 60_000)
    const key = `changes:${organiser.userId}`
    const begun = { startsAt: nextMinute, count: 4 }
    await fresh.client.rateWindow.upsert({ where: { key }, create: { key, ...begun }, update: begun })
    expect(await short('alderby', 2, organiser, { now, mostAMinute: 5 })).toMatchObject({ jars: 2 })
    expect(await fresh.client.rateWindow.findUnique({ where: { key } })).toMatchObject({ startsAt: nextMinute, count: 5 })
    expect(await short('alderby', 3, organiser, { now, mostAMinute: 5 })).toBeNull()
    await fresh.client.rateWindow.delete({ where: { key } })
  })

  it('sent again with its key is answered the same by the long way, and done once', async () => {
    const [key, input] = [randomUUID(), jam('elmsway', 3)]
    const first = await claimTheShortWay(tap(input, member, { key }))
    expect(first).toMatchObject({ jars: 3, claimed: 3 })
    expect(await claimTheShortWay(tap(input, member, { key }))).toBeNull()
    const again = await runCommand(claimJars, { actor: member, idempotencyKey: key, input })
    expect(again).toEqual({ ok: true, value: { reply: first, replayed: true } })
    const other = await runCommand(claimJars, { actor: member, idempotencyKey: key, input: jam('elmsway', 4) })
    expect(other).toMatchObject({ ok: false, problem: { code: 'key-used-before' } })
  })

  it('with one key, four callers at a time in twenty rounds, is done once', async () => {
    for (let round = 0; round < 20; round += 1) {
      const [key, input] = [randomUUID(), jam('elmsway', 1 + (round % 5))]
      const before = await fresh.client.history.count()
      const either = async () => {
        const done = await claimTheShortWay(tap(input, member, { key }))
        return done ?? (await runCommand(claimJars, { actor: member, idempotencyKey: key, input }))
      }
      const answers = await Promise.all([either(), either(), either(), either()])
      expect(answers.filter((answer) => 'claimId' in answer)).toHaveLength(1)
      expect(await fresh.client.history.count()).toBe(before + 1)
    }
    expect(await firstBrokenEntry(groupId)).toBeNull()
  })

  describe('leaves to the long way, with nothing written,', () => {
    const cases: readonly [what: string, prepare: () => Promise<ShortTap> | ShortTap][] = [
      ['an input that is none', () => tap({ ...jam('elmsway', 1), jars: 1.5 })],
      ['a session that was ended', () => tap(jam('elmsway', 1), organiser, { sessionVersion: 2 })],
      ['a role that may not', () => tap(jam('elmsway', 1), visitor)],
      ['another household', () => tap(jam('fennick', 1), member)],
      ['another group', () => tap(jam('elmsway', 1), organiser, { groupId: 'other' })],
      ['a household that is not there', () => tap(jam('nobody', 1))],
      ['more than is offered', () => tap(jam('elmsway', 21))],
      ['an allergen to compare', () => tap(jam('dunmarrow', 1, evening.pickles))],
      ['too many changes in this minute', () => tap(jam('elmsway', 1), organiser, { mostAMinute: 0 })],
      [
        'a window that is not open yet',
        async () => {
          await saved(setClaimWindow, { dayId: evening.dayId, version: 2, claimsOpenAt: '2027-08-20T08:00' })
          return tap(jam('elmsway', 1))
        },
      ],
      ['a window that is over', () => tap(jam('elmsway', 1), organiser, { now: new Date('2027-08-25T12:00:00Z') })],
      [
        'a cap of the day',
        async () => {
          await saved(setClaimWindow, { dayId: evening.dayId, version: 2, householdCap: 5 })
          return tap(jam('elmsway', 1))
        },
      ],
      [
        'more than the cap of the product',
        async () => {
          await saved(setOfferCap, { preparationId: evening.jam, householdCap: 2 })
          return tap(jam('elmsway', 3))
        },
      ],
      [
        'a waiting list',
        async () => {
          await saved(claimJars, jam('alderby', 20))
          await saved(waitForJars, { preparationId: evening.jam, householdId: 'fennick', jars: 2 })
          return tap(jam('alderby', 10))
        },
      ],
    ]
    it.each(cases)('%s', async (_, prepare) => {
      const asked = await prepare()
      const before = await written()
      expect(await claimTheShortWay(asked)).toBeNull()
      expect(await written()).toEqual(before)
    })

    it('a person who is no longer here', async () => {
      const where = { groupId_id: { groupId, id: member.personId } }
      await fresh.client.person.update({ where, data: { active: false } })
      expect(await short('elmsway', 1, member)).toBeNull()
      await fresh.client.person.update({ where, data: { active: true } })
      expect(await short('elmsway', 1, member)).not.toBeNull()
    })
  })
})
