import 'server-only'
import { z } from 'zod'
import type { Tx } from '@/lib/db/in-transaction'
import { noticeDay } from '@/lib/live/notice'
import type { Actor } from '@/shared/access/actor'
import { may, reachOf } from '@/shared/access/policy'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notAllowed, type Refusal } from '@/shared/wording/refusal'
import { type Answer, answerOnce } from './answer-once'
import { appendHistory } from './append-history'
import type { AnyCommand, Reply } from './command'

/** What the person's own client made for this one tap; a repeated key is the same tap. */
export const IdempotencyKey = z.uuid('Send a fresh UUID with each new entry')

export interface Request {
  readonly actor: Actor
  readonly idempotencyKey: string
  readonly input: unknown
  readonly now?: Date
}

/**
 * The one way in which a group's data changes: parse, then in one transaction answer a repeated key, ask the policy, do, write history, keep the reply.
 * With its commit whoever looks at the day is told to look again.
 *
 * A refusal rolls everything back and is not kept, so the same key may be tried again.
 */
export async function runCommand(command: AnyCommand, request: Request): Promise<Result<Answer, Refusal>> {
  const key = IdempotencyKey.safeParse(request.idempotencyKey)
  if (!key.success) return refuse(badInput({ idempotencyKey: ['Send a fresh UUID as Idempotency-Key with each new entry.'] }))
  // Who may never do this learns nothing of what it takes.
  if (reachOf(request.actor, command.act) === 'none') return refuse(notAllowed(command.summary))
  const input = command.schema.safeParse(request.input)
  if (!input.success) return refuse(badInput(fieldsOf(input.error)))
  if (!may(request.actor, command.act, command.householdOf?.(input.data as never))) return refuse(notAllowed(command.summary))
  const { actor, now = new Date() } = request
  if (command.ahead) await command.ahead({ actor, now }, input.data as never)
  return inOneTransaction(command, request, input.data)
}

async function inOneTransaction(command: AnyCommand, request: Request, input: unknown): Promise<Result<Answer, Refusal>> {
  const { actor, idempotencyKey: key } = request
  const tap = { key, by: actor.userId, command: command.name, body: { groupId: actor.groupId, input: request.input } }
  return answerOnce(tap, (tx) => perform(tx, command, request, input))
}

async function perform(tx: Tx, command: AnyCommand, request: Request, input: unknown): Promise<Result<Reply, Refusal>> {
  const { actor, now = new Date() } = request
  const done = await command.run({ tx, actor, now }, input as never)
  if (!done.ok) return done
  const { groupId, userId: actorId, name: actorName } = actor
  await appendHistory(
    tx,
    done.value.history.map((line) => ({ ...line, groupId, command: command.name, actorId, actorName, recordedAt: now })),
  )
  const dayIds = new Set(done.value.history.flatMap(({ dayId }) => (dayId === undefined ? [] : [dayId])))
  for (const dayId of dayIds) await noticeDay(tx, { groupId, dayId, kind: 'day' })
  return ok(done.value.reply)
}

/** Field path to sentences, as a form shows them. */
export function fieldsOf(error: z.ZodError): Record<string, string[]> {
  const fields = new Map<string, string[]>() // a field may be called "constructor" by whoever sends it
  for (const issue of error.issues) {
    const path = issue.path.join('.') || ('keys' in issue ? String((issue as { keys: string[] }).keys[0]) : 'body')
    fields.set(path, [...(fields.get(path) ?? []), issue.message])
  }
  return Object.fromEntries(fields)
}
