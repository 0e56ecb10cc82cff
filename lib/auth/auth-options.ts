import 'server-only'
import { randomUUID } from 'node:crypto'
import { PrismaAdapter } from '@next-auth/prisma-adapter'
import type { NextAuthOptions } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import EmailProvider from 'next-auth/providers/email'
import { database } from '@/lib/db/client'
import { sendMail } from '@/lib/effects/send-mail'
import { env } from '@/lib/env'
import { log } from '@/lib/log'
import { countInWindow } from '@/lib/services/count-in-window'
import { EmailAddress, SignIn } from '@/shared/forms/sign-in'
import { passwordFits } from './password'

declare module 'next-auth/jwt' {
  interface JWT {
    /** The user's session version when this session began; an older one than the stored is no session. */
    version?: number
  }
}

const THIRTY_DAYS_IN_SECONDS = 30 * 24 * 60 * 60

/** Everything next-auth is told, made when first asked for, so that a build needs no secret. */
export function authOptions(): NextAuthOptions {
  const { authSecret, baseUrl } = env()
  const secure = baseUrl.startsWith('https:')
  return {
    adapter: PrismaAdapter(database() as never),
    secret: authSecret,
    session: { strategy: 'jwt', maxAge: THIRTY_DAYS_IN_SECONDS },
    pages: { signIn: '/sign-in', error: '/sign-in', verifyRequest: '/sign-in/mailed' },
    cookies: {
      sessionToken: cookie('lidsong.session', secure),
      csrfToken: cookie('lidsong.csrf', secure),
    },
    providers: [passwordProvider(), linkProvider()],
    callbacks: {
      async jwt({ token, user }) {
        if (user) token.version = await sessionVersionOf(user.id)
        return token
      },
      async signIn({ user, account, email }) {
        // A link is mailed only to people who have an account: otherwise anybody could have mail sent to anybody.
        if (account?.provider !== 'email' || !email?.verificationRequest) return true
        return (await countInWindow(`mailed-link:${user.email}`, 5, 60)) === 0
      },
    },
    events: {
      signIn: ({ user, account }) => log().info({ userId: user.id, by: account?.provider }, 'signed in'),
    },
  }
}

const cookie = (name: string, secure: boolean) => ({
  name: secure ? `__Host-${name}` : name,
  options: { httpOnly: true, sameSite: 'lax' as const, path: '/', secure },
})

async function sessionVersionOf(userId: string): Promise<number> {
  const user = await database().user.findUnique({ where: { id: userId }, select: { sessionVersion: true } })
  return user?.sessionVersion ?? 0
}

function passwordProvider() {
  return CredentialsProvider({
    name: 'password',
    credentials: { email: { type: 'email' }, password: { type: 'password' } },
    async authorize(credentials, request) {
      const typed = SignIn.safeParse({ email: credentials?.email, password: credentials?.password })
      if (!typed.success) return null
      const { email, password } = typed.data
      const address = String(request.headers?.['x-forwarded-for'] ?? 'direct').split(',')[0]
      const waits = await Promise.all([
        countInWindow(`sign-in:${email}`, env().signInsPerMinute, 60),
        countInWindow(`sign-in-from:${address}`, env().signInsPerMinute * 4, 60),
      ])
      if (Math.max(...waits) > 0) throw new Error('too-many-tries')
      const user = await database().user.findUnique({ where: { email } })
      if (!(await passwordFits(password, user?.passwordHash)) || !user) return null
      return { id: user.id, email: user.email, name: user.name }
    },
  })
}

function linkProvider() {
  return EmailProvider({
    from: env().mailFrom,
    maxAge: 15 * 60,
    normalizeIdentifier: (identifier) => EmailAddress.parse(identifier),
    async sendVerificationRequest({ identifier, url }) {
      const known = await database().user.findUnique({ where: { email: identifier }, select: { id: true } })
      // The answer on the screen is the same either way: nobody learns who has an account.
      if (!known) return
      const text = `Open this link within 15 minutes to sign in to Lidsong:\n\n${url}\n\nIf you did not ask for it, do nothing.\n`
      await sendMail({ to: identifier, subject: 'Your link to sign in to Lidsong', text }, randomUUID())
    },
  })
}
