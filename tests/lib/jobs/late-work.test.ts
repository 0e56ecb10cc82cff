import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { GET as ready } from '@/app/api/health/ready/route'
import { lateWork } from '@/lib/jobs/late-work'
import { runUntil } from '@/lib/jobs/run-jobs'
import { freshDatabase } from '@/tests/support/fresh-database'
import { mailOutbox } from '@/tests/support/mail-outbox'

const fresh = freshDatabase()
const { mails } = mailOutbox()

/** Minutes from now. */
const at = (minutes: number) => new Date(Date.now() + minutes * 60_000)

beforeAll(() => {
  vi.setConfig({ testTimeout: 60_000 })
})

beforeEach(async () => {
  await fresh.client.outgoingMail.deleteMany()
  await fresh.asOwner('DELETE FROM graphile_worker._private_jobs')
})

/** A mail that was queued, and nobody told of it: as it is when a process ends between the two. */
async function leftBehind(since = at(-10)): Promise<string> {
  const to = `${randomUUID()}@example.org`
  await fresh.client.outgoingMail.create({
    data: { id: randomUUID(), to, subject: 'Come and join', text: 'The address', createdAt: since, nextTryAt: since },
  })
  return to
}

const addJob = (runAt: Date) => fresh.asOwner(`SELECT graphile_worker.add_job('deliver-mail', '{}', run_at => $1)`, [runAt])

const lock = (lockedAt: Date) =>
  fresh.asOwner(`UPDATE graphile_worker._private_jobs SET locked_at = $1, locked_by = 'somebody'`, [lockedAt])

describe('mail that was left behind', () => {
  it('is sent by a process that begins, without any other change', async () => {
    const to = await leftBehind()
    const enough = new AbortController()
    const running = runUntil(enough.signal)
    try {
      await vi.waitFor(() => expect(mails().filter((mail) => mail.includes(`To: ${to}`))).toHaveLength(1), 30_000)
    } finally {
      enough.abort()
      await running
    }
    expect(await lateWork(at(0))).toEqual([])
  })
})

describe('late work', () => {
  it('is mail that is due for two minutes, and none that is due now, later, or was given up', async () => {
    await leftBehind(at(-1))
    expect(await lateWork(at(0))).toEqual([])
    expect(await lateWork(at(2))).toEqual(['mail'])
    await fresh.client.outgoingMail.updateMany({ data: { tries: 8 } })
    expect(await lateWork(at(2))).toEqual([])
  })

  it('is a job that is ready for two minutes, and none that is to run later or was given up', async () => {
    await addJob(at(-1))
    expect(await lateWork(at(0))).toEqual([])
    expect(await lateWork(at(2))).toEqual(['jobs'])
    await fresh.asOwner('UPDATE graphile_worker._private_jobs SET attempts = max_attempts')
    expect(await lateWork(at(2))).toEqual([])
  })

  it('is no job behind others that are being done, unless whoever does those must be gone', async () => {
    await addJob(at(-30))
    await lock(at(-3))
    await addJob(at(-20))
    expect(await lateWork(at(0))).toEqual([])
    expect(await lateWork(at(60))).toEqual(['jobs'])
  })

  it('is named by the ready answer, which is ready all the same and says no more', async () => {
    await leftBehind()
    await addJob(at(-10))
    await vi.waitFor(async () => {
      const reply = await ready()
      expect([reply.status, await reply.json()]).toEqual([200, { status: 'ready', late: ['jobs', 'mail'] }])
    }, 30_000)
  })
})
