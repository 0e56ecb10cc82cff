import 'server-only'
import { notFound, redirect } from 'next/navigation'
import { cache } from 'react'
import { database } from '@/lib/db/client'
import type { Actor, Role } from '@/shared/access/actor'
import { type Act, may } from '@/shared/access/policy'
import { readToken } from './read-token'

/** Somebody with an account, in whatever groups. */
export interface SignedIn {
  readonly userId: string
  readonly name: string
  readonly email: string
}

/** Who is signed in, checked against the stored session version; null when nobody is, or the session was ended. Asked once a request. */
export const currentUser = cache(async (): Promise<SignedIn | null> => {
  const token = await readToken()
  if (!token?.sub) return null
  const user = await database().user.findUnique({
    where: { id: token.sub },
    select: { id: true, name: true, email: true, sessionVersion: true },
  })
  if (!user || user.sessionVersion !== token.version) return null
  return { userId: user.id, name: user.name ?? user.email, email: user.email }
})

/** Who is acting in this group; null when nobody is signed in or the person is not in the group. One statement. */
export const currentActor = cache(async (groupId: string): Promise<Actor | null> => {
  const token = await readToken()
  if (!token?.sub) return null
  const person = await database().person.findFirst({
    where: { groupId, userId: token.sub, active: true, user: { sessionVersion: token.version ?? 0 } },
    select: { id: true, householdId: true, name: true, role: true },
  })
  if (!person) return null
  return { userId: token.sub, personId: person.id, groupId, householdId: person.householdId, name: person.name, role: person.role as Role }
})

/** For pages: the actor, or the sign-in page, or "not found" for another group and for what the role may not see. */
export async function requireActor(groupId: string, act: Act, householdId?: string): Promise<Actor> {
  const actor = await currentActor(groupId)
  if (!actor) {
    if (await currentUser()) notFound()
    redirect(`/sign-in?callbackUrl=${encodeURIComponent(`/g/${groupId}`)}`)
  }
  if (!may(actor, act, householdId)) notFound()
  return actor
}
