import 'server-only'
import type { NextAuthOptions } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import { database } from '@/lib/db/client'
import { env } from '@/lib/env'
import { clientAddress } from '@/lib/http/client-address'
import { log } from '@/lib/log'
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
    secret: env().authSecret,
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    pages: { signIn: '/sign-in', error: '/sign-in' },
    cookies: {
      sessionToken: { name: cookieName('lidsong.session'), options: cookieOptions() },
      csrfToken: { name: cookieName('lidsong.csrf'), options: cookieOptions() },
    },
    providers: [passwordProvider()],
    callbacks: {
      async jwt({ token, user }) {
        if (user) token.version = await sessionVersionOf(user.id)
        return token
      },
    },
    events: {
      signIn: ({ user, account }) => log().info({ userId: user.id, by: account?.provider }, 'signed in'),
    },
  }
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
