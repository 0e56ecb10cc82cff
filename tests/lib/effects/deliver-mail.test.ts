import { randomUUID } from 'node:crypto'
import { beforeEach, describe, expect, it } from 'vitest'
import { deliverMail } from '@/lib/effects/deliver-mail'
import { freshDatabase } from '../../support/fresh-database'
import { mailOutbox } from '../../support/mail-outbox'

const fresh = freshDatabase()
const { mails } = mailOutbox()

beforeEach(async () => {
  await fresh.client.outgoingMail.deleteMany()
})

const START = new Date('2027-08-01T12:00:00Z')
const at = (minutes: number) => () => new Date(START.getTime() + minutes * 60_000)

async function queue(to: string): Promise<string> {
  const id = randomUUID()
  await fresh.client.outgoingMail.create({
    data: { id, to, subject: 'Come and join', text: 'The address', createdAt: START, nextTryAt: START },
  })
  return id
}

describe('the queued mail', () => {
  it('goes out once, and what was in it is not kept', async () => {
    const id = await queue('ada@example.org')
    expect(await deliverMail(at(0))).toEqual({ sent: 1, failed: 0 })
    expect(await deliverMail(at(60))).toEqual({ sent: 0, failed: 0 })
    expect(mails().filter((mail) => mail.includes('ada@example.org'))).toHaveLength(1)
    expect(await fresh.client.outgoingMail.findUniqueOrThrow({ where: { id } })).toMatchObject({ text: '', tries: 1, sentAt: START })
  })

  it('is sent once by four senders at the same moment, in each of twenty rounds', async () => {
    for (let round = 0; round < 20; round++) {
      const id = await queue(`race-${round}@example.org`)
      const results = await Promise.all([1, 2, 3, 4].map(() => deliverMail(at(0))))
      expect(results.reduce((sum, { sent }) => sum + sent, 0)).toBe(1)
      expect((await fresh.client.outgoingMail.findUniqueOrThrow({ where: { id } })).tries).toBe(1)
    }
  })

  it('that cannot be sent is tried again, each time later, eight times in all', async () => {
    const id = await queue('bad\nBcc: all@example.org')
    expect(await deliverMail(at(0))).toEqual({ sent: 0, failed: 1 })
    expect(await deliverMail(at(0.5))).toEqual({ sent: 0, failed: 0 })
    expect(await deliverMail(at(1))).toEqual({ sent: 0, failed: 1 })
    expect(await deliverMail(at(2))).toEqual({ sent: 0, failed: 0 })
    for (let minutes = 3; minutes < 1000; minutes += 50) await deliverMail(at(minutes))
    const kept = await fresh.client.outgoingMail.findUniqueOrThrow({ where: { id } })
    expect(kept).toMatchObject({ sentAt: null, tries: 8, lastError: 'a mail header may hold no line break' })
    expect(mails().some((mail) => mail.includes('Bcc'))).toBe(false)
  })
})
