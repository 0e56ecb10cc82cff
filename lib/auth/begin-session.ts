import 'server-only'
import { cookies } from 'next/headers'
import { encode } from 'next-auth/jwt'
import { env } from '@/lib/env'
import { cookieName, cookieOptions, SESSION_SECONDS } from './session-cookie'

/** Whom a session is for, and the session version that it begins with. */
export interface NewSession {
  readonly userId: string
  readonly name: string
  readonly email: string
  readonly version: number
}

/** Signs somebody in from a server action: the same token in the same cookie as next-auth's own sign-in. */
export async function beginSession({ userId, name, email, version }: NewSession): Promise<void> {
  const token = await encode({ token: { sub: userId, name, email, version }, secret: env().authSecret, maxAge: SESSION_SECONDS })
  const jar = await cookies()
  jar.set(cookieName('lidsong.session'), token, { ...cookieOptions(), maxAge: SESSION_SECONDS })
}

/** Ends the session of this browser. */
export async function endSession(): Promise<void> {
  const jar = await cookies()
  jar.set(cookieName('lidsong.session'), '', { ...cookieOptions(), maxAge: 0 })
}
