import 'server-only'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { readToken } from '@/lib/auth/read-token'
import { canonicalJson } from '@/lib/commands/canonical-json'
import type { AnyCommand, Reply } from '@/lib/commands/command'
import { IdempotencyKey, runCommand } from '@/lib/commands/run-command'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { env } from '@/lib/env'
import { countInWindow } from '@/lib/services/count-in-window'
import { rolesFor } from '@/shared/access/policy'
import { notFound, notSaved, type Refusal, signInFirst } from '@/shared/wording/refusal'
import { problemResponse } from './problem'
import { readJson } from './read-json'
import { fromOurPages } from './same-origin'

/** What a handler makes of the parsed body: which command, with which input. */
export type Choose = (body: unknown) => { command: AnyCommand; input: unknown } | Refusal

/** Answers one unsafe request of `/api/v1`: who, what, do, answer. */
export async function answerCommand(request: Request, groupId: string, choose: Choose): Promise<Response> {
  try {
    return await answer(request, groupId, choose)
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return problemResponse(notSaved(error.isOutcomeUnknown))
    throw error
  }
}

async function answer(request: Request, groupId: string, choose: Choose): Promise<Response> {
  const ours = fromOurPages(request.headers)
  if (!ours.ok) return problemResponse(ours.problem)
  const body = await readJson(request)
  if (!body.ok) return problemResponse(body.problem)

  const chosen = choose(body.value)
  const short = await goShortWay(request, groupId, chosen)
  if (short) return answerWith(short)

  const actor = await currentActor(groupId)
  if (!actor) return problemResponse((await currentUser()) ? notFound('Group') : signInFirst())
  const wait = await countInWindow(`changes:${actor.userId}`, env().changesPerMinute, 60)
  if (wait > 0) return problemResponse(TOO_FAST, { 'retry-after': String(wait) })

  if ('code' in chosen) return problemResponse(chosen)
  const idempotencyKey = request.headers.get('idempotency-key') ?? ''
  const done = await runCommand(chosen.command, { actor, idempotencyKey, input: chosen.input })
  if (!done.ok) return problemResponse(done.problem)
  return answerWith(done.value.reply, done.value.replayed)
}

/** The store keeps a reply's names in an order of its own: a repeated request gets the same bytes only when ours is fixed too. */
const answerWith = (reply: Reply, isReplayed = false): Response =>
  new Response(canonicalJson(reply), {
    headers: {
      ...{ 'content-type': 'application/json', 'cache-control': 'no-store' },
      ...(isReplayed ? { 'idempotent-replayed': 'true' } : {}),
    },
  })

/** The plain case of a change that has a short way; null when it must go the long one, which then finds everything as it was. */
async function goShortWay(request: Request, groupId: string, chosen: ReturnType<Choose>): Promise<Reply | null> {
  if ('code' in chosen || !chosen.command.shortWay) return null
  const { command, input } = chosen
  const key = IdempotencyKey.safeParse(request.headers.get('idempotency-key'))
  const token = await readToken()
  if (!key.success || !token?.sub) return null
  const session = { userId: token.sub, sessionVersion: token.version ?? 0 }
  const asked = { key: key.data, groupId, roles: rolesFor(command.act), input, mostAMinute: env().changesPerMinute, now: new Date() }
  return chosen.command.shortWay({ ...asked, ...session })
}

const TOO_FAST: Refusal = {
  code: 'too-many-requests',
  status: 429,
  what: 'Not saved: too many entries in a minute.',
  instead: 'Wait a moment and send it again.',
}
