import { randomUUID } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { inTransaction } from '@/lib/db/in-transaction'
import { dayListener } from '@/lib/live/day-listener'
import { dayStreams, type Listener, streamDay } from '@/lib/live/day-streams'
import { noticeDay, readNotice } from '@/lib/live/notice'
import { dayChangedSince } from '@/lib/queries/day-changed-since'
import { claimJars } from '@/lib/services/day/claim-jars'
import { freshDatabase } from '@/tests/support/fresh-database'
import { ada, change, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
let evening: OpenEvening
let opened: Heard[]

beforeAll(async () => {
  process.env.LOG_LEVEL = 'silent'
  await seedFernHollow(fresh.client)
  await fresh.client.user.create({ data: { id: 'cleo', email: 'cleo@example.org', sessionVersion: 3 } })
  await fresh.client.person.updateMany({ where: { id: 'p3' }, data: { userId: 'cleo' } })
})

beforeEach(async () => {
  opened = []
  evening = await openEvening()
})

afterEach(async () => {
  for (const stream of opened) stream.leave()
  await sleep(50)
})

const CLEO: Listener = { groupId: 'fern-hollow', personId: 'p3', userId: 'cleo', role: 'member', sessionVersion: 3 }

interface Heard {
  readonly said: () => string
  readonly looks: () => string[]
  readonly isOver: () => boolean
  readonly leave: () => void
}

/** Opens a stream of the day and reads it to its end. */
async function listen(dayId = evening.dayId, listener = CLEO, hasChanged = async () => false): Promise<Heard> {
  const gone = new AbortController()
  let [said, isOver] = ['', false]
  const reader = streamDay({ listener, dayId, hasChanged, gone: gone.signal }).getReader()
  void (async () => {
    for (;;) {
      const { value, done } = await reader.read()
      if (done) break
      said += new TextDecoder().decode(value)
    }
    isOver = true
  })()
  const heard: Heard = {
    said: () => said,
    looks: () => [...said.matchAll(/event: look\ndata: (\w+)/g)].map(([, kind]) => kind ?? ''),
    isOver: () => isOver,
    leave: () => gone.abort(),
  }
  opened.push(heard)
  await until(() => said.includes('event: open'))
  expect(await dayListener().isListening()).toBe(true)
  return heard
}

async function until(check: () => boolean): Promise<void> {
  for (let look = 0; look < 1_200 && !check(); look++) await sleep(25)
  if (!check()) throw new Error('still waiting after 30 s')
}

const LISTENING = `FROM pg_stat_activity WHERE datname = current_database() AND query = 'LISTEN lidsong_day'`

async function asSuperuser(sql: string): Promise<{ count?: string }[]> {
  const client = new pg.Client({ connectionString: fresh.superuserUrl })
  await client.connect()
  const { rows } = await client.query(sql)
  await client.end()
  return rows
}

const claim = (jars = 3) => saved(claimJars, { preparationId: evening.jam, householdId: 'alderby', jars })

describe('a stream of a day', () => {
  it('tells to look again after each change of that day, and nothing of what was changed', async () => {
    const heard = await listen()
    await claim()
    await until(() => heard.looks().length > 0)
    expect(heard.looks()).toEqual(['day'])
    expect(heard.said()).not.toMatch(/claim|alderby|[0-9a-f]{8}-/)
  })

  it('tells nothing of another day, nor of the same day’s id in another group', async () => {
    const other = await openEvening()
    const [heard, foreign] = [await listen(other.dayId), await listen(evening.dayId, { ...CLEO, groupId: 'elsewhere' })]
    await claim()
    await sleep(300)
    expect([heard.looks(), foreign.looks()]).toEqual([[], []])
  })

  it('tells nothing of a change that was refused, nor of one that was rolled back', async () => {
    const heard = await listen()
    expect(await change(claimJars, { preparationId: evening.jam, householdId: 'alderby', jars: 500 })).toMatchObject({ ok: false })
    const undone = inTransaction(async (tx) => {
      await noticeDay(tx, { groupId: 'fern-hollow', dayId: evening.dayId, kind: 'day' })
      throw new Error('undone')
    })
    await expect(undone).rejects.toThrow('undone')
    await sleep(300)
    expect(heard.looks()).toEqual([])
  })

  it('tells only after the commit', async () => {
    const heard = await listen()
    await inTransaction(async (tx) => {
      await noticeDay(tx, { groupId: 'fern-hollow', dayId: evening.dayId, kind: 'day' })
      await sleep(300)
      expect(heard.looks()).toEqual([])
    })
    await until(() => heard.looks().length === 1)
  })

  it('gathers what comes within a second into one notice, a change before a search’s step', async () => {
    const heard = await listen()
    const notice = (kind: 'day' | 'search') => inTransaction((tx) => noticeDay(tx, { groupId: 'fern-hollow', dayId: evening.dayId, kind }))
    await notice('search')
    for (let times = 0; times < 10; times++) await notice(times === 4 ? 'day' : 'search')
    await until(() => heard.looks().includes('day'))
    await sleep(1_300)
    // The first at once, then one a second for as long as the ten took: the change is told once, and no two come closer together.
    const moments = [...heard.said().matchAll(/id: (\d+)\nevent: look/g)].map(([, moment]) => Number(moment))
    for (const [index, moment] of moments.entries()) if (index > 0) expect(moment - (moments[index - 1] ?? 0)).toBeGreaterThanOrEqual(990)
    expect(heard.looks()[0]).toBe('search')
    expect(heard.looks().filter((kind) => kind === 'day')).toHaveLength(1)
    expect(heard.looks().length).toBeLessThan(11)
  })

  it('tells at once when the day was changed between the page and the stream', async () => {
    const heard = await listen(evening.dayId, CLEO, async () => true)
    await until(() => heard.looks().length === 1)
  })

  it('hears through one connection however many there are, and lets it go with the last', async () => {
    const connections = async () => Number((await asSuperuser(`SELECT count(*) ${LISTENING}`))[0]?.count)
    for (let count = 0; count < 5; count++) await listen()
    expect(await connections()).toBe(1)
    for (const stream of opened) stream.leave()
    await vi.waitFor(async () => expect(await connections()).toBe(0), 30_000)
  })

  it('hears again after its connection was lost, and tells to look at what it may have missed', async () => {
    const heard = await listen()
    await asSuperuser(`SELECT pg_terminate_backend(pid) ${LISTENING}`)
    await until(() => heard.looks().length === 1)
    await sleep(1_100)
    await claim()
    await until(() => heard.looks().length === 2)
  })
})

describe('rights', () => {
  it('are asked for again: sign-out everywhere, a role or leaving the group ends the streams, and theirs alone', async () => {
    const other: Listener = { ...CLEO, personId: 'p1', userId: 'ada', role: 'organiser', sessionVersion: 1 }
    await fresh.client.user.create({ data: { id: 'ada', email: 'ada@example.org' } })
    await fresh.client.person.updateMany({ where: { id: 'p1' }, data: { userId: 'ada' } })
    const kept = await listen(evening.dayId, other)
    const changes = [
      () => fresh.client.user.update({ where: { id: 'cleo' }, data: { sessionVersion: { increment: 1 } } }),
      () => fresh.client.person.updateMany({ where: { id: 'p3' }, data: { role: 'visitor' } }),
      () => fresh.client.person.updateMany({ where: { id: 'p3' }, data: { active: false } }),
    ]
    let listener = CLEO
    for (const make of changes) {
      const heard = await listen(evening.dayId, listener)
      await dayStreams().closeWithoutRights()
      await sleep(50)
      expect(heard.isOver()).toBe(false)
      await make()
      await dayStreams().closeWithoutRights()
      await until(heard.isOver)
      const { role, user } = await fresh.client.person.findFirstOrThrow({ where: { id: 'p3' }, include: { user: true } })
      listener = { ...CLEO, role, sessionVersion: user?.sessionVersion ?? 0 }
    }
    expect(kept.isOver()).toBe(false)
    await fresh.client.person.updateMany({ where: { id: 'p3' }, data: { active: true, role: 'member' } })
  })

  it('end at eight streams of one person', async () => {
    for (let count = 0; count < 8; count++) {
      expect(dayStreams().isFull(CLEO.userId)).toBe(false)
      await listen()
    }
    expect(dayStreams().isFull(CLEO.userId)).toBe(true)
    expect(dayStreams().isFull('somebody else')).toBe(false)
    opened[0]?.leave()
    await sleep(50)
    expect(dayStreams().isFull(CLEO.userId)).toBe(false)
  })
})

describe('what was changed since', () => {
  it('is known for days of the group alone', async () => {
    const before = new Date(Date.now() - 60_000)
    expect(await dayChangedSince('fern-hollow', evening.dayId, before)).toBe(true)
    expect(await dayChangedSince('fern-hollow', evening.dayId, new Date(Date.now() + 60_000))).toBe(false)
    expect(await dayChangedSince('elsewhere', evening.dayId, before)).toBeNull()
    expect(await dayChangedSince('fern-hollow', randomUUID(), before)).toBeNull()
  })

  it('holds what began before the page was made and waited for its lock until after', async () => {
    const latest = await fresh.client.history.findFirstOrThrow({ where: { dayId: evening.dayId }, orderBy: { recordedAt: 'desc' } })
    const later = (ms: number) => new Date(latest.recordedAt.getTime() + ms)
    expect(await dayChangedSince('fern-hollow', evening.dayId, later(4_900))).toBe(true)
    expect(await dayChangedSince('fern-hollow', evening.dayId, later(5_000))).toBe(false)
  })

  it('is read from nothing but a notice of ours', () => {
    for (const payload of [undefined, '', 'null', '{}', '[1,2,"day"]', '["a","b","else"]', '["a","b"]'])
      expect(readNotice(payload)).toBeNull()
    expect(readNotice('["a","b","day"]')).toEqual({ groupId: 'a', dayId: 'b', kind: 'day' })
  })
})

describe('a server that is told to end', () => {
  it('closes every stream at once', async () => {
    const ending = new AbortController()
    Reflect.set(globalThis, Symbol.for('lidsong.shutdown'), ending.signal)
    const streams = [await listen(), await listen()]
    ending.abort()
    await until(() => streams.every((stream) => stream.isOver()))
    expect(dayStreams().isFull(ada.userId)).toBe(true)
    Reflect.deleteProperty(globalThis, Symbol.for('lidsong.shutdown'))
  })
})
