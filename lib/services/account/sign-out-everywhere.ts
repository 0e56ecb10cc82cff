import 'server-only'
import { database } from '@/lib/db/client'

/** Ends every session of an account at its next request, on whatever device. */
export async function signOutEverywhere(userId: string): Promise<void> {
  await database().user.update({ where: { id: userId }, data: { sessionVersion: { increment: 1 } }, select: { id: true } })
}
