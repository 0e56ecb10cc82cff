import 'server-only'
import { hashPassword } from '@/lib/auth/password'
import { database } from '@/lib/db/client'

/** Sets a new password and ends every older session; answers the session version that counts from now on. */
export async function setPassword(userId: string, password: string): Promise<number> {
  const passwordHash = await hashPassword(password)
  const { sessionVersion } = await database().user.update({
    where: { id: userId },
    data: { passwordHash, sessionVersion: { increment: 1 } },
    select: { sessionVersion: true },
  })
  return sessionVersion
}
