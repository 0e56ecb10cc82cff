import 'server-only'
import { database } from '@/lib/db/client'
import { env } from '@/lib/env'
import { countInWindow } from '@/lib/services/count-in-window'
import { SignIn } from '@/shared/forms/sign-in'
import type { NewSession } from './begin-session'
import { passwordFits } from './password'

/** Either somebody, or nobody, without saying whether the address or the password was wrong; or too many tries, whoever it was. */
export type SignInCheck =
  | { readonly kind: 'fits'; readonly session: NewSession }
  | { readonly kind: 'no-fit' }
  | { readonly kind: 'too-many-tries' }

/**
 * Checks an e-mail address and a password, counting tries by address typed and by where they come from.
 *
 * An unknown address costs as much time as a wrong password.
 */
export async function checkSignIn(typed: unknown, from: string): Promise<SignInCheck> {
  const read = SignIn.safeParse(typed)
  if (!read.success) return { kind: 'no-fit' }
  const { email, password } = read.data
  const waits = await Promise.all([
    countInWindow(`sign-in:${email}`, env().signInsPerMinute, 60),
    countInWindow(`sign-in-from:${from}`, env().signInsPerMinute * 4, 60),
  ])
  if (Math.max(...waits) > 0) return { kind: 'too-many-tries' }
  const select = { id: true, name: true, email: true, passwordHash: true, sessionVersion: true } as const
  const user = await database().user.findUnique({ where: { email }, select })
  if (!(await passwordFits(password, user?.passwordHash)) || !user) return { kind: 'no-fit' }
  return { kind: 'fits', session: { userId: user.id, name: user.name ?? user.email, email: user.email, version: user.sessionVersion } }
}
