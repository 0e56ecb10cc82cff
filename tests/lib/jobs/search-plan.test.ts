import { spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { scriptArguments } from '@/lib/cli/script-arguments.mjs'
import { runUntil } from '@/lib/jobs/run-jobs'
import { searchPlan, type SearchOptions } from '@/lib/jobs/search-plan'
import { takeUpSearch, wakeLostSearches } from '@/lib/jobs/search-rows'
import { latestSearch } from '@/lib/queries/plan-search'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { triedOutlook } from '@/lib/queries/tried-outlook'
import { changeOffer } from '@/lib/services/day/change-offer'
import { claimJars } from '@/lib/services/day/claim-jars'
import { planDay } from '@/lib/services/day/plan-day'
import { takeSearch } from '@/lib/services/day/take-search'
import { SavedDayPlan } from '@/shared/forms/saved-plan'
import { checkDayPlan } from '@/tests/support/check-day-plan'
import { openBigDay, stayForBigDays } from '@/tests/support/big-day'
import { freshDatabase } from '@/tests/support/fresh-database'
import { ada, change, type OpenEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

// A busy machine takes its time to find a first timetable.
vi.setConfig({ testTimeout: 120_000 })

const fresh = freshDatabase()
let day: OpenEvening
let stopRunner: () => Promise<void>

beforeAll(async () => {
  process.env.LOG_LEVEL = 'silent'
  await seedFernHollow(fresh.client)
  await stayForBigDays(fresh.client)
  await fresh.client.user.create({ data: { id: ada.userId, email: 'ada@example.org' } })
  await fresh.client.person.updateMany({ where: { id: 'p1' }, data: { userId: ada.userId } })
})

beforeEach(async () => {
  stopRunner = async () => {}
  day = await openBigDay(fresh.client)
})

afterEach(() => stopRunner())

const start = async (dayId = day.dayId): Promise<string> => String((await saved(planDay, { dayId })).searchId)
const row = (id: string) => fresh.client.planSearch.findUniqueOrThrow({ where: { groupId_id: { groupId: 'fern-hollow', id } } })
const searches = () => fresh.client.planSearch.findMany({ where: { dayId: day.dayId }, orderBy: { createdAt: 'asc' } })
const plans = () => fresh.client.plan.count({ where: { dayId: day.dayId } })
const jobs = async () =>
  (await fresh.asOwner('SELECT key FROM graphile_worker._private_jobs WHERE key IS NOT NULL')).rows.map(({ key }) => key)
const run = (searchId: string, options: SearchOptions) => searchPlan({ groupId: 'fern-hollow', searchId }, options)

/** Enough for a plan and some better ones, however busy the machine is. */
const SOON: SearchOptions = { milliseconds: 120_000, mostSteps: 12 }
const LONG: SearchOptions = { milliseconds: 120_000 }

/** Takes work from the queue as a server does, with searches that end soon. */
function startRunner(): void {
  const end = new AbortController()
  const running = runUntil(end.signal, {
    'search-plan': (told) => searchPlan(told as never, SOON),
    'deliver-mail': async () => {},
  })
  stopRunner = async () => {
    end.abort()
    await running
  }
}

async function until(check: () => Promise<boolean>, seconds = 60): Promise<void> {
  for (const end = Date.now() + seconds * 1000; Date.now() < end; await sleep(50)) if (await check()) return
  throw new Error(
    `still waiting after ${seconds} s: ${JSON.stringify(await searches(), (key, value) => (key === 'plan' || key === 'problem' ? undefined : value))}`,
  )
}

/** As if nothing had been heard of its runner for a minute. */
const lose = (id: string) => fresh.client.planSearch.updateMany({ where: { id }, data: { aliveAt: new Date(Date.now() - 60_000) } })

describe('a day of many loads', () => {
  it('is not planned in the request: a search waits in the queue, and the day stays as it is', async () => {
    const reply = await saved(planDay, { dayId: day.dayId })
    expect(reply).toMatchObject({ dayId: day.dayId, batches: 20, loads: 20 })
    expect(await row(String(reply.searchId))).toMatchObject({ state: 'queued', plan: null, askedBy: ada.userId })
    expect(await jobs()).toContain(`search-plan:fern-hollow:${reply.searchId}`)
    expect(await plans()).toBe(0)
  })

  it('is searched by whichever process takes the job, and its plan is saved whole in the name of who asked', async () => {
    const searchId = await start()
    startRunner()
    await until(async () => (await row(searchId)).takenAs !== null)
    const done = await row(searchId)
    expect(done).toMatchObject({ state: 'done', takenAs: 1, runner: null, said: null })
    const stored = await readSavedPlan('fern-hollow', day.dayId)
    expect(stored?.plan.finishAt).toBe(done.finishAt)
    if (stored) expect(checkDayPlan(stored.problem, stored.plan)).toEqual([])
    expect(await fresh.client.kettleBatch.count({ where: { dayId: day.dayId } })).toBe(20)
    const [entry] = await fresh.client.history.findMany({ where: { dayId: day.dayId, command: 'take-search' } })
    expect(entry?.actorId).toBe(ada.userId)
    expect((await fresh.client.day.findFirstOrThrow({ where: { id: day.dayId } })).state).toBe('planned')
    expect((done.trail as number[][]).map(([, finish]) => finish)).toEqual(
      [...new Set((done.trail as number[][]).map(([, finish]) => finish ?? 0))].sort((a, b) => b - a),
    )
  })

  it('of 10,000 batches is refused with the limit, at once', async () => {
    await fresh.client.preparation.updateMany({ where: { id: day.jam }, data: { offered: 80_000, claimed: 80_000 } })
    const startedAt = performance.now()
    const refused = await change(planDay, { dayId: day.dayId })
    expect(refused).toMatchObject({ ok: false, problem: { code: 'too-many-batches', why: 'A day may have at most 2,000 tested batches.' } })
    expect(performance.now() - startedAt).toBeLessThan(20_000)
    expect(await searches()).toEqual([])
  })

  it('is not planned many times over for a surer plan while somebody waits', async () => {
    const startedAt = performance.now()
    const refused = await change(planDay, { dayId: day.dayId, change: 'surer:90' })
    expect(refused).toMatchObject({ ok: false, problem: { code: 'too-large-for-surer' } })
    expect(await triedOutlook('fern-hollow', day.dayId, 'surer:90')).toBeNull()
    expect(performance.now() - startedAt).toBeLessThan(20_000)
  })

  it('that counting alone shows not to fit is refused at once, without a search', async () => {
    await fresh.client.day.updateMany({ where: { id: day.dayId }, data: { cannersEmptyBy: 20 * 60 } })
    expect(await change(planDay, { dayId: day.dayId })).toMatchObject({ ok: false, problem: { code: 'plan-canner-minutes' } })
    expect(await searches()).toEqual([])
  })
})

describe('one search of a day', () => {
  it('is started by four callers at the same moment, in each of twenty rounds', async () => {
    for (let round = 0; round < 20; round++) {
      const answers = await Promise.all([1, 2, 3, 4].map(() => change(planDay, { dayId: day.dayId })))
      const ids = answers.map((answer) => (answer.ok ? answer.value.reply.searchId : answer.problem.code))
      expect(new Set(ids).size).toBe(1)
      const [only, ...others] = await searches()
      expect(others).toEqual([])
      expect(only).toMatchObject({ id: ids[0], state: 'queued' })
      expect((await jobs()).filter((key) => key.endsWith(`:${only?.id}`))).toHaveLength(1)
      await saved(takeSearch, { dayId: day.dayId, searchId: String(ids[0]) })
    }
  })

  it('gives way to a newer one when the day is asked for with other claims', async () => {
    const first = await start()
    await saved(claimJars, { preparationId: day.jam, householdId: 'alderby', jars: 12 })
    const second = await start()
    expect(second).not.toBe(first)
    expect((await searches()).map(({ id, state }) => [id, state])).toEqual([
      [first, 'stopped'],
      [second, 'queued'],
    ])
    expect(await row(first)).toMatchObject({ said: { what: 'This search was ended.' } })
  })

  it('shows the newer search also where whoever asked for it had waited for the lock', async () => {
    const now = new Date()
    const asked = (at: Date) => change(planDay, { dayId: day.dayId }, ada, at)
    expect((await asked(now)).ok).toBe(true)
    await saved(claimJars, { preparationId: day.jam, householdId: 'alderby', jars: 12 })
    const second = await asked(new Date(now.getTime() - 5))
    expect(await latestSearch('fern-hollow', day.dayId)).toMatchObject({
      id: second.ok && second.value.reply.searchId,
      state: 'queued',
    })
  })
})

describe('a running search', () => {
  it('stops at will within seconds, and the best plan so far is the day’s', async () => {
    const searchId = await start()
    const running = run(searchId, LONG)
    await until(async () => (await row(searchId)).finishAt !== null)
    const reply = await saved(takeSearch, { dayId: day.dayId, searchId })
    expect(reply).toMatchObject({ number: 1, loads: 20 })
    const stoppedAt = performance.now()
    await running
    expect(performance.now() - stoppedAt).toBeLessThan(20_000)
    expect(await row(searchId)).toMatchObject({ state: 'stopped', takenAs: 1 })
    expect(await saved(takeSearch, { dayId: day.dayId, searchId })).toMatchObject({ number: 1 })
    expect(await plans()).toBe(1)
  })

  it('whose thread ends itself leaves the last good plan, and says so', async () => {
    const searchId = await start()
    await run(searchId, { ...LONG, file: join(process.cwd(), 'tests', 'support', 'crashing-thread.mjs') })
    const left = await row(searchId)
    expect(left).toMatchObject({
      state: 'failed',
      takenAs: null,
      said: { what: 'The search broke off.', instead: expect.stringContaining('last good plan') },
    })
    expect(SavedDayPlan.parse(left.plan).finishAt).toBe(left.finishAt)
    expect(await plans()).toBe(0)
    expect(await saved(takeSearch, { dayId: day.dayId, searchId })).toMatchObject({ number: 1 })
  })

  it('that goes on for much longer than it may is ended by force', async () => {
    const searchId = await start()
    await run(searchId, { milliseconds: 0, graceMs: 50, file: join(process.cwd(), 'tests', 'support', 'endless-thread.mjs') })
    expect(await row(searchId)).toMatchObject({ state: 'failed', said: { why: expect.stringContaining('longer than it may') } })
  })

  it('does not save a plan of what the day is no longer: it says that it has changed', async () => {
    const searchId = await start()
    await saved(claimJars, { preparationId: day.jam, householdId: 'alderby', jars: 12 })
    await run(searchId, SOON)
    expect(await row(searchId)).toMatchObject({
      state: 'done',
      takenAs: null,
      said: { what: expect.stringContaining('the day has changed since') },
    })
    expect(await plans()).toBe(0)
    expect(await change(takeSearch, { dayId: day.dayId, searchId })).toMatchObject({
      ok: false,
      problem: { code: 'changed-since', status: 409 },
    })
    await saved(claimJars, { preparationId: day.jam, householdId: 'alderby', jars: 20 })
    expect(await saved(takeSearch, { dayId: day.dayId, searchId })).toMatchObject({ number: 1 })
  })

  it('saves nothing in the name of somebody who may no longer plan', async () => {
    const searchId = await start()
    await fresh.client.person.updateMany({ where: { userId: ada.userId }, data: { role: 'member' } })
    await run(searchId, SOON)
    await fresh.client.person.updateMany({ where: { userId: ada.userId }, data: { role: 'organiser' } })
    expect(await row(searchId)).toMatchObject({
      state: 'failed',
      takenAs: null,
      said: { what: expect.stringContaining('not for your role') },
    })
    expect(await plans()).toBe(0)
  })
})

describe('a search whose process is told to end', () => {
  it('is handed back to the queue with what it had found, and is no lost one', async () => {
    const searchId = await start()
    const ending = new AbortController()
    Reflect.set(globalThis, Symbol.for('lidsong.shutdown'), ending.signal)
    const running = run(searchId, LONG)
    await until(async () => (await row(searchId)).finishAt !== null)
    const toldAt = performance.now()
    ending.abort()
    await running
    Reflect.deleteProperty(globalThis, Symbol.for('lidsong.shutdown'))
    expect(performance.now() - toldAt).toBeLessThan(20_000)
    expect(await row(searchId)).toMatchObject({ state: 'queued', runner: null, finishAt: expect.any(Number), tries: 0 })
    expect(await jobs()).toContain(`search-plan:fern-hollow:${searchId}`)
    expect((await takeUpSearch('fern-hollow', searchId, 'another'))?.tries).toBe(0)
  })
})

describe('a search whose process is gone', () => {
  it('because it was killed goes on in another, and is never worse than what the first had found', async () => {
    const searchId = await start()
    const args = scriptArguments(join('tests', 'support', 'run-search.ts'), ['fern-hollow', searchId])
    const first = spawn(process.execPath, args, { env: process.env, stdio: 'ignore' })
    await until(async () => (await row(searchId)).finishAt !== null)
    first.kill('SIGKILL')
    await once(first, 'exit')
    const left = await row(searchId)
    expect(left).toMatchObject({ state: 'running', tries: 0 })
    await lose(searchId)
    await wakeLostSearches()
    await run(searchId, SOON)
    const done = await row(searchId)
    expect(done).toMatchObject({ state: 'done', tries: 1, takenAs: 1 })
    expect(done.finishAt).toBeLessThanOrEqual(left.finishAt ?? 0)
  })

  it('is taken up by another, once, by four that look at the same moment', async () => {
    const searchId = await start()
    await takeUpSearch('fern-hollow', searchId, 'the first')
    expect(await takeUpSearch('fern-hollow', searchId, 'too early')).toBeNull()
    await lose(searchId)
    await wakeLostSearches()
    expect(await jobs()).toContain(`search-plan:fern-hollow:${searchId}`)
    const taken = await Promise.all([1, 2, 3, 4].map(() => takeUpSearch('fern-hollow', searchId, randomUUID())))
    expect(taken.filter((each) => each !== null)).toHaveLength(1)
    expect(taken.find((each) => each !== null)?.tries).toBe(1)
  })

  it('is marked as failed, honestly, when that happens again and again', async () => {
    const searchId = await start()
    for (const name of ['first', 'second', 'third']) {
      expect(await takeUpSearch('fern-hollow', searchId, name)).not.toBeNull()
      await lose(searchId)
    }
    await run(searchId, SOON)
    expect(await row(searchId)).toMatchObject({ state: 'failed', said: { why: expect.stringContaining('lost three times') } })
  })

  it('that had come to its end only has its plan saved', async () => {
    const searchId = await start()
    await run(searchId, SOON)
    await fresh.client.plan.deleteMany({ where: { dayId: day.dayId } })
    await fresh.client.planSearch.updateMany({
      where: { id: searchId },
      data: { state: 'running', runner: 'gone', endedAt: null, takenAs: null, isComplete: true, aliveAt: new Date(Date.now() - 60_000) },
    })
    await fresh.client.idempotentRequest.deleteMany({ where: { key: searchId } })
    await run(searchId, LONG)
    expect(await row(searchId)).toMatchObject({ state: 'done', takenAs: 1 })
  })
})

describe('a plan of a smaller day', () => {
  it('ends the search for the larger one', async () => {
    const searchId = await start()
    for (const [preparationId, offered] of [
      [day.jam, 8],
      [day.pickles, 8],
    ] as const) {
      await fresh.client.claim.deleteMany({ where: { preparationId } })
      await fresh.client.preparation.updateMany({ where: { id: preparationId }, data: { claimed: 0 } })
      await saved(changeOffer, { preparationId, offered, spareJars: 0 })
      await saved(claimJars, { preparationId, householdId: 'alderby', jars: 8 })
    }
    expect(await saved(planDay, { dayId: day.dayId })).toMatchObject({ number: 1, batches: 2 })
    expect(await row(searchId)).toMatchObject({ state: 'stopped', takenAs: null })
  })
})
