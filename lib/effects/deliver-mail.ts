import 'server-only'
import { database } from '@/lib/db/client'
import { log } from '@/lib/log'
import { sendMail } from './send-mail'

const MOST_TRIES = 8
const MOST_AT_ONCE = 20

interface Taken {
  readonly id: string
  readonly to: string
  readonly subject: string
  readonly text: string
  readonly tries: number
}

/**
 * Sends the queued mails that are due, a few at most, and says how many went out.
 *
 * Each is leased first, so that two processes never send the same one at once, and sent outside any transaction.
 * A failed try waits twice as long as the one before; after eight the mail stays with its error. The job queue calls it: with each mail that is
 * queued, and when one is due again.
 */
export async function deliverMail(now: () => Date = () => new Date()): Promise<{ sent: number; failed: number }> {
  let sent = 0
  let failed = 0
  while (sent + failed < MOST_AT_ONCE) {
    const mail = await takeNext(now())
    if (!mail) break
    if (await tryToSend(mail, now)) sent += 1
    else failed += 1
  }
  return { sent, failed }
}

/** Is there a mail that waits to be sent now? */
export async function isMailDue(now: Date): Promise<boolean> {
  const where = { sentAt: null, nextTryAt: { lte: now }, tries: { lt: MOST_TRIES } }
  return (await database().outgoingMail.findFirst({ where, select: { id: true } })) !== null
}

/** Leases the oldest mail that is due: `next_try_at` moves on, so nobody else takes it up before. */
async function takeNext(now: Date): Promise<Taken | undefined> {
  const [mail] = await database().$queryRaw<Taken[]>`
    UPDATE outgoing_mail SET tries = tries + 1, next_try_at = ${now}::timestamptz + make_interval(mins => (2 ^ tries)::int)
    WHERE id = (
      SELECT id FROM outgoing_mail WHERE sent_at IS NULL AND next_try_at <= ${now} AND tries < ${MOST_TRIES}
      ORDER BY created_at LIMIT 1 FOR UPDATE SKIP LOCKED)
    RETURNING id, "to", subject, text, tries`
  return mail
}

async function tryToSend({ id, to, subject, text }: Taken, now: () => Date): Promise<boolean> {
  try {
    await sendMail({ to, subject, text }, id)
  } catch (error) {
    const lastError = error instanceof Error ? error.message.slice(0, 300) : 'unknown'
    await database().outgoingMail.update({ where: { id }, data: { lastError } })
    log().warn({ mailId: id }, 'mail not sent')
    return false
  }
  // What was in it is not kept: it may hold the address of an invitation.
  await database().outgoingMail.update({ where: { id }, data: { sentAt: now(), text: '', lastError: null } })
  return true
}
