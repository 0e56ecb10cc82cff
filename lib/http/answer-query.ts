import 'server-only'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import type { Actor } from '@/shared/access/actor'
import { type Act, may } from '@/shared/access/policy'
import { notFound, notSaved, signInFirst } from '@/shared/wording/refusal'
import { problemResponse } from './problem'

/** Answers one question of `/api/v1`: who asks, may they, what is it. What may not be seen is not found. */
export async function answerQuery<Answer extends object>(
  groupId: string,
  act: Act,
  thing: string,
  ask: (actor: Actor) => Promise<Answer | null>,
): Promise<Response> {
  try {
    const actor = await currentActor(groupId)
    if (!actor) return problemResponse((await currentUser()) ? notFound('Group') : signInFirst())
    const answer = may(actor, act) ? await ask(actor) : null
    return answer ? Response.json(answer, { headers: { 'cache-control': 'private, no-store' } }) : problemResponse(notFound(thing))
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return problemResponse(notSaved())
    throw error
  }
}
