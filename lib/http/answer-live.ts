import 'server-only'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { readToken } from '@/lib/auth/read-token'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { dayStreams, streamDay } from '@/lib/live/day-streams'
import { dayChangedSince } from '@/lib/queries/day-changed-since'
import { may } from '@/shared/access/policy'
import { notFound, notSaved, type Refusal, signInFirst } from '@/shared/wording/refusal'
import { problemResponse } from './problem'

/** `no-transform`: compression would hold notices back until it has enough of them. */
const HEADERS = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'private, no-store, no-transform',
  'x-accel-buffering': 'no',
}

/** Opens the notices of one day to a member of its group: who asks, may they see the day, is there room. */
export async function answerLive(request: Request, groupId: string, dayId: string): Promise<Response> {
  try {
    const actor = await currentActor(groupId)
    if (!actor) return problemResponse((await currentUser()) ? notFound('Group') : signInFirst())
    const since = momentOf(request)
    if (!may(actor, 'see-day') || (await dayChangedSince(groupId, dayId, since)) === null) return problemResponse(notFound('Canning day'))
    if (dayStreams().isFull(actor.userId)) return problemResponse(TOO_MANY, { 'retry-after': '60' })
    const { personId, userId, role } = actor
    const sessionVersion = (await readToken())?.version ?? 0
    const stream = streamDay({
      listener: { groupId, personId, userId, role, sessionVersion },
      dayId,
      hasChanged: async () => (await dayChangedSince(groupId, dayId, since)) === true,
      gone: request.signal,
    })
    return new Response(stream, { headers: HEADERS })
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return problemResponse(notSaved())
    throw error
  }
}

/** When whoever asks last looked: the id of the last notice after a lost connection, else the time at which their page was made, else now. */
function momentOf(request: Request): Date {
  const sent = request.headers.get('last-event-id') || new URL(request.url).searchParams.get('since')
  const moment = Number(sent)
  const now = Date.now()
  return new Date(sent && Number.isInteger(moment) && moment > 0 && moment < now ? moment : now)
}

const TOO_MANY: Refusal = {
  code: 'too-many-streams',
  status: 429,
  what: 'Too many screens listen at once.',
  why: 'One person may have eight open, and one server so many as it can serve.',
  instead: 'Close some of them. This one looks again by itself, slowly.',
}
