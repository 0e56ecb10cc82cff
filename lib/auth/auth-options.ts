import 'server-only'
import { randomUUID } from 'node:crypto'
import { PrismaAdapter } from '@next-auth/prisma-adapter'
import type { NextAuthOptions } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import EmailProvider from 'next-auth/providers/email'
import { database } from '@/lib/db/client'
import { sendMail } from '@/lib/effects/send-mail'
import { env } from '@/lib/env'
import { clientAddress } from '@/lib/http/client-address'
import { log } from '@/lib/log'
import { countInWindow } from '@/lib/services/count-in-window'
import { EmailAddress } from '@/shared/forms/sign-in'
import { checkSignIn } from './check-sign-in'
import { cookieName, cookieOptions, SESSION_SECONDS } from './session-cookie'

declare module 'next-auth/jwt' {
  interface JWT {
    /** The user's session version when this session began; an older one than the stored is no session. */
    version?: number
  }
}

/** Everything next-auth is told, made when first asked for, so that a build needs no secret. */
export function authOptions(): NextAuthOptions {
  return {
    adapter: PrismaAdapter(database() as never),
    secret: env().authSecret,
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    pages: { signIn: '/sign-in', error: '/sign-in', verifyRequest: '/sign-in/mailed' },
    cookies: {
      sessionToken: { name: cookieName('lidsong.session'), options: cookieOptions() },
      csrfToken: { name: cookieName('lidsong.csrf'), options: cookieOptions() },
    },
    providers: [passwordProvider(), linkProvider()],
    callbacks: {
      async jwt({ token, user }) {
        if (user) token.version = await sessionVersionOf(user.id)
        return token
      },
      async signIn({ user, account, email }) {
        // A link is mailed only to people who have an account: otherwise anybody could have mail sent to anybody.
        if (account?.provider !== 'email') return true
        if (!email?.verificationRequest) {
          await settleMailbox(user.id)
          return true
        }
        return (await countInWindow(`mailed-link:${user.email}`, 5, 60)) === 0
      },
    },
    events: {
      signIn: ({ user, account }) => log().info({ userId: user.id, by: account?.provider }, 'signed in'),
    },
  }
}

const FIRST_LINK = 'It is your first: a password from before no longer counts after it. Choose a new one under "Your account".\n\n'

/**
 * Whoever opens a mailed link for the first time owns the mailbox. A password from before may be somebody else's, who signed up
 * with an address that was not theirs: it is dropped, and so are the sessions it began.
 */
async function settleMailbox(userId: string): Promise<void> {
  await database().user.updateMany({
    where: { id: userId, emailVerified: null },
    data: { passwordHash: null, sessionVersion: { increment: 1 } },
  })
}

async function sessionVersionOf(userId: string): Promise<number> {
  const user = await database().user.findUnique({ where: { id: userId }, select: { sessionVersion: true } })
  return user?.sessionVersion ?? 0
}

function passwordProvider() {
  return CredentialsProvider({
    name: 'password',
    credentials: { email: { type: 'email' }, password: { type: 'password' } },
    async authorize(credentials, request) {
      const typed = { email: credentials?.email, password: credentials?.password }
      const check = await checkSignIn(typed, clientAddress(request.headers?.['x-forwarded-for']))
      if (check.kind === 'too-many-tries') throw new Error('too-many-tries')
      if (check.kind === 'no-fit') return null
      const { userId: id, email, name } = check.session
      return { id, email, name }
    },
  })
}

function linkProvider() {
  return EmailProvider({
    from: env().mailFrom,
    maxAge: 15 * 60,
    normalizeIdentifier: (identifier) => EmailAddress.parse(identifier),
    async sendVerificationRequest({ identifier, url }) {
      const known = await database().user.findUnique({ where: { email: identifier }, select: { emailVerified: true, passwordHash: true } })
      // The answer on the screen is the same either way: nobody learns who has an account.
      if (!known) return
      const drops = known.passwordHash && !known.emailVerified ? FIRST_LINK : ''
      const text = `Open this link within 15 minutes to sign in to Lidsong:\n\n${url}\n\n${drops}If you did not ask for it, do nothing.\n`
      await sendMail({ to: identifier, subject: 'Your link to sign in to Lidsong', text }, randomUUID())
    },
  })
}
