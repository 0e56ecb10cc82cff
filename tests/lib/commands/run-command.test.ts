import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { runCommand } from '@/lib/commands/run-command'
import { firstBrokenEntry } from '@/lib/queries/first-broken-entry'
import { addHousehold } from '@/lib/services/group/add-household'
import type { Actor, Role } from '@/shared/access/actor'
import { freshDatabase } from '../../support/fresh-database'

const fresh = freshDatabase()
const groupId = 'g1'
const actorOf = (role: Role, userId = `u-${role}`): Actor => ({ userId, personId: 'p', groupId, householdId: 'h0', name: 'Somebody', role })
const organiser = actorOf('organiser')
const add = (name: string, idempotencyKey = randomUUID(), actor = organiser) =>
  runCommand(addHousehold, { actor, idempotencyKey, input: { name, headcount: 2 } })

/** Transactions of this database that wait for their next statement. */
async function openTransactions(): Promise<number> {
  const [row] = await fresh.client.$queryRaw<{ open: number }[]>`
    SELECT count(*)::int AS open FROM pg_stat_activity WHERE datname = current_database() AND state = 'idle in transaction'`
  return row?.open ?? 0
}

beforeAll(async () => {
  await fresh.client.group.create({
    data: { id: groupId, name: 'Brook Lane', code: 'BL', timeZone: 'America/New_York', askLine: 'Ask at the hall' },
  })
})

describe('a change', () => {
  it('is done, answered and written to the history', async () => {
    const done = await add('Ash')
    expect(done.ok && done.value.replayed).toBe(false)
    const entries = await fresh.client.history.findMany({ where: { groupId }, orderBy: { number: 'asc' } })
    expect(entries.at(-1)).toMatchObject({ command: 'add-household', actorId: organiser.userId })
  })

  it('sent again with its key is answered the same and done once', async () => {
    const key = randomUUID()
    const [first, again] = [await add('Birch', key), await add('Birch', key)]
    expect(first.ok && again.ok && again.value.reply).toEqual(first.ok && first.value.reply)
    expect(again.ok && again.value.replayed).toBe(true)
    expect(await fresh.client.household.count({ where: { name: 'Birch' } })).toBe(1)
  })

  it('counts once for four callers with one key, in each of twenty rounds', async () => {
    for (let round = 0; round < 20; round++) {
      const key = randomUUID()
      const answers = await Promise.all([1, 2, 3, 4].map(() => add(`Round ${round}`, key)))
      expect(answers.every((answer) => answer.ok)).toBe(true)
      expect(new Set(answers.map((answer) => answer.ok && JSON.stringify(answer.value.reply))).size).toBe(1)
      expect(answers.filter((answer) => answer.ok && !answer.value.replayed)).toHaveLength(1)
    }
  })

  it('is refused when its key was used for something else, or by somebody else', async () => {
    const key = randomUUID()
    await add('Cedar', key)
    const other = await add('Dogwood', key)
    const stranger = await add('Cedar', key, actorOf('organiser', 'u-other'))
    expect([other, stranger].map((answer) => !answer.ok && answer.problem.code)).toEqual(['key-used-before', 'key-used-before'])
  })

  it('that is refused leaves nothing behind, and its key may be used again', async () => {
    const key = randomUUID()
    const before = await fresh.client.history.count()
    expect(await add('Ash', key)).toMatchObject({
      ok: false,
      problem: { status: 422, fields: { name: [expect.stringContaining('here already')] } },
    })
    expect(await fresh.client.history.count()).toBe(before)
    expect(await add('Elm', key)).toMatchObject({ ok: true })
  })

  it('is refused for a role that may not, before its input is looked at', async () => {
    for (const role of ['station-lead', 'operator', 'member', 'helper', 'visitor'] as const) {
      const answer = await runCommand(addHousehold, { actor: actorOf(role), idempotencyKey: randomUUID(), input: 'nonsense' })
      expect(answer).toMatchObject({ ok: false, problem: { code: 'not-allowed', status: 403 } })
    }
  })

  it('is worked out ahead before its transaction is open, and only for whoever may', async () => {
    const seen: string[] = []
    const slow = {
      ...addHousehold,
      ahead: async () => void seen.push(`ahead ${await openTransactions()}`),
      run: async (...args: Parameters<typeof addHousehold.run>) => {
        seen.push(`run ${await openTransactions()}`)
        return addHousehold.run(...args)
      },
    }
    const input = { name: 'Gorse', headcount: 2 }
    await runCommand(slow, { actor: actorOf('member'), idempotencyKey: randomUUID(), input })
    expect(seen).toEqual([])
    expect(await runCommand(slow, { actor: organiser, idempotencyKey: randomUUID(), input })).toMatchObject({ ok: true })
    expect(seen).toEqual(['ahead 0', 'run 1'])
  })

  it.each([
    ['no key', { idempotencyKey: '', input: { name: 'Fir', headcount: 1 } }, 'idempotencyKey'],
    ['a number that is none', { idempotencyKey: randomUUID(), input: { name: 'Fir', headcount: 'many' } }, 'headcount'],
    ['half a person', { idempotencyKey: randomUUID(), input: { name: 'Fir', headcount: 1.5 } }, 'headcount'],
    ['a field we do not know', { idempotencyKey: randomUUID(), input: { name: 'Fir', headcount: 1, groupId: 'g2' } }, 'groupId'],
    ['an object where text belongs', { idempotencyKey: randomUUID(), input: { name: { not: '' }, headcount: 1 } }, 'name'],
    ['a megabyte of text', { idempotencyKey: randomUUID(), input: { name: 'x'.repeat(1_000_000), headcount: 1 } }, 'name'],
    ['a control character', { idempotencyKey: randomUUID(), input: { name: 'F\u0000ir', headcount: 1 } }, 'name'],
    ['text that turns round', { idempotencyKey: randomUUID(), input: { name: 'F\u202eir', headcount: 1 } }, 'name'],
  ])('with %s is refused by name and writes nothing', async (_, request, field) => {
    const before = await fresh.client.household.count()
    const answer = await runCommand(addHousehold, { actor: organiser, ...request })
    expect(answer).toMatchObject({ ok: false, problem: { status: 422, fields: { [field]: [expect.any(String)] } } })
    expect(await fresh.client.household.count()).toBe(before)
  })
})

describe('the history', () => {
  it('may not be changed, cut or emptied by the app', async () => {
    await expect(fresh.client.$executeRaw`UPDATE history SET subject = 'x'`).rejects.toThrow(/permission denied/)
    await expect(fresh.client.$executeRaw`DELETE FROM history`).rejects.toThrow(/permission denied/)
    await expect(fresh.client.$executeRaw`TRUNCATE history`).rejects.toThrow(/permission denied/)
  })

  it('stays one unbroken chain when four people save at once, twenty times over', async () => {
    for (let round = 0; round < 20; round++) {
      const answers = await Promise.all([1, 2, 3, 4].map((caller) => add(`Chain ${round}-${caller}`)))
      expect(answers.every((answer) => answer.ok)).toBe(true)
    }
    expect(await firstBrokenEntry(groupId)).toBeNull()
  })

  it('stands as written, and names the entry when somebody with more rights changed, took out or cut one', async () => {
    expect(await firstBrokenEntry(groupId)).toBeNull()
    const tamper = async (sql: string, undo: string) => {
      await fresh.asOwner(sql)
      const found = await firstBrokenEntry(groupId)
      await fresh.asOwner(undo)
      return found
    }
    await fresh.asOwner('CREATE TABLE kept AS SELECT * FROM history')
    const restore = 'DELETE FROM history; INSERT INTO history SELECT * FROM kept'
    expect(await tamper("UPDATE history SET subject = 'other' WHERE number = 3", restore)).toMatchObject({ number: 3n, why: 'changed' })
    expect(await tamper('DELETE FROM history WHERE number = 4', restore)).toMatchObject({ number: 4n, why: 'missing' })
    expect(await tamper('DELETE FROM history WHERE number > 5', restore)).toMatchObject({ number: 6n, why: 'cut off' })
    const swap =
      'UPDATE history h SET detail = k.detail FROM kept k WHERE (h.number = 2 AND k.number = 3) OR (h.number = 3 AND k.number = 2)'
    expect(await tamper(swap, restore)).toMatchObject({ number: 2n, why: 'changed' })
    expect(await firstBrokenEntry(groupId)).toBeNull()
  })
})
