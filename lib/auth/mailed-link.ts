import 'server-only'
import { createHash, randomBytes, randomUUID } from 'node:crypto'
import { PrismaAdapter } from '@next-auth/prisma-adapter'
import type { Adapter } from 'next-auth/adapters'
import { database } from '@/lib/db/client'
import { sendMail } from '@/lib/effects/send-mail'
import { env } from '@/lib/env'
import { log } from '@/lib/log'
import { countInWindow } from '@/lib/services/count-in-window'
import type { MailedLink } from '@/shared/forms/sign-in'
import { ok, type Result, refuse } from '@/shared/result/result'
import { linkIsOver, linkNotMailed, tooManyTries } from '@/shared/wording/account'
import type { Refusal } from '@/shared/wording/refusal'
import type { NewSession } from './begin-session'

const LINK_MS = 15 * 60 * 1000
const LINKS_A_MINUTE = 5

const FIRST_LINK = 'It is your first: a password from before no longer counts after it. Choose a new one under "Your account".\n\n'

/**
 * Mails a link to sign in to an address that has an account. The answer is the same where it has none: nobody learns who has one, and nobody
 * can have mail sent to anybody.
 *
 * @param next - the path to go on to, checked
 */
export async function mailLink(email: string, next: string, now: Date): Promise<Result<true, Refusal>> {
  if ((await countInWindow(`mailed-link:${email}`, LINKS_A_MINUTE, 60)) > 0) return refuse(tooManyTries())
  const known = await database().user.findUnique({ where: { email }, select: { emailVerified: true, passwordHash: true } })
  if (!known) return ok(true)
  const token = randomBytes(32).toString('base64url')
  await tokens().createVerificationToken({ identifier: email, token: hashOf(token), expires: new Date(now.getTime() + LINK_MS) })
  const address = `${env().baseUrl}/sign-in/link?${new URLSearchParams({ email, token, callbackUrl: next })}`
  const drops = known.passwordHash && !known.emailVerified ? FIRST_LINK : ''
  const text = `Open this link within 15 minutes to sign in to Lidsong:\n\n${address}\n\n${drops}If you did not ask for it, do nothing.\n`
  try {
    await sendMail({ to: email, subject: 'Your link to sign in to Lidsong', text }, randomUUID())
    return ok(true)
  } catch {
    log().warn('a link to sign in was not mailed') // the server's words may hold the address
    return refuse(linkNotMailed())
  }
}

/** Signs in by a mailed link, which is used up by it: once, and in time. */
export async function openMailedLink({ email, token }: MailedLink, now: Date): Promise<Result<NewSession, Refusal>> {
  const kept = await tokens().useVerificationToken({ identifier: email, token: hashOf(token) })
  if (!kept || kept.expires <= now) return refuse(linkIsOver())
  await settleMailbox(email, now)
  const select = { id: true, name: true, sessionVersion: true } as const
  const user = await database().user.findUnique({ where: { email }, select })
  if (!user) return refuse(linkIsOver())
  log().info({ userId: user.id, by: 'email' }, 'signed in')
  return ok({ userId: user.id, name: user.name ?? email, email, version: user.sessionVersion })
}

/**
 * Whoever opens a mailed link for the first time owns the mailbox. A password from before may be somebody else's, who signed up
 * with an address that was not theirs: it is dropped, and so are the sessions it began.
 */
async function settleMailbox(email: string, now: Date): Promise<void> {
  await database().user.updateMany({
    where: { email, emailVerified: null },
    data: { passwordHash: null, sessionVersion: { increment: 1 }, emailVerified: now },
  })
}

/** Whoever reads the table can sign in as nobody. */
const hashOf = (token: string): string => createHash('sha256').update(`${token}${env().authSecret}`).digest('hex')

const tokens = () => PrismaAdapter(database() as never) as Required<Pick<Adapter, 'createVerificationToken' | 'useVerificationToken'>>
