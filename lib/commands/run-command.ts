import 'server-only'
import { z } from 'zod'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { inTransaction, type Tx } from '@/lib/db/in-transaction'
import type { Actor } from '@/shared/access/actor'
import { may, reachOf } from '@/shared/access/policy'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notAllowed, notSaved, type Refusal } from '@/shared/wording/refusal'
import { appendHistory } from './append-history'
import { canonicalJson, sha256 } from './canonical-json'
import type { AnyCommand, Reply } from './command'

/** What the person's own client made for this one tap; a repeated key is the same tap. */
export const IdempotencyKey = z.uuid('Send a fresh UUID with each new entry')

export interface Request {
  readonly actor: Actor
  readonly idempotencyKey: string
  readonly input: unknown
  readonly now?: Date
}

export interface Answer {
  readonly reply: Reply
  /** True when this key was answered before: nothing was done again. */
  readonly replayed: boolean
}

/** Thrown inside the transaction to roll it back with its reason. */
class Refused extends Error {
  constructor(readonly refusal: Refusal) {
    super(refusal.code)
  }
}

/**
 * The one way in which a group's data changes: parse, then in one transaction answer a repeated key, ask the policy, do, write history, keep the reply.
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
  return inOneTransaction(command, request, input.data)
}

async function inOneTransaction(command: AnyCommand, request: Request, input: unknown): Promise<Result<Answer, Refusal>> {
  try {
    return await inTransaction(async (tx) => {
      const kept = await takeKey(tx, command.name, request)
      if (kept) return ok({ reply: kept, replayed: true })
      return ok({ reply: await perform(tx, command, request, input), replayed: false })
    })
  } catch (error) {
    if (error instanceof Refused) return refuse(error.refusal)
    if (error instanceof DatabaseUnavailable) return refuse(notSaved(error.isOutcomeUnknown))
    throw error
  }
}

async function perform(tx: Tx, command: AnyCommand, { actor, idempotencyKey, now = new Date() }: Request, input: unknown): Promise<Reply> {
  const done = await command.run({ tx, actor, now }, input as never)
  if (!done.ok) throw new Refused(done.problem)
  const { groupId, userId: actorId, name: actorName } = actor
  await appendHistory(
    tx,
    done.value.history.map((line) => ({ ...line, groupId, command: command.name, actorId, actorName, recordedAt: now })),
  )
  await tx.idempotentRequest.update({ where: { key: idempotencyKey }, data: { reply: done.value.reply } })
  return done.value.reply
}

/** Takes the key for this request, or gives back what it was answered with. A second caller waits here until the first has committed. */
async function takeKey(tx: Tx, command: string, { actor, idempotencyKey, input }: Request): Promise<Reply | undefined> {
  const bodyHash = sha256(canonicalJson({ groupId: actor.groupId, input }))
  const taken = await tx.$executeRaw`
    INSERT INTO idempotent_request (key, actor_id, command, body_hash) VALUES (${idempotencyKey}, ${actor.userId}, ${command}, ${bodyHash})
    ON CONFLICT (key) DO NOTHING`
  if (taken === 1) return undefined
  const kept = await tx.idempotentRequest.findUnique({ where: { key: idempotencyKey } })
  const same = kept && kept.actorId === actor.userId && kept.command === command && kept.bodyHash === bodyHash
  if (!same || !kept.reply) throw new Refused(KEY_USED)
  return kept.reply as Reply
}

const KEY_USED: Refusal = {
  code: 'key-used-before',
  status: 409,
  what: 'Not saved: this entry was sent before with other contents.',
  instead: 'Load the page again and enter it once more.',
}

/** Field path to sentences, as a form shows them. */
export function fieldsOf(error: z.ZodError): Record<string, string[]> {
  const fields: Record<string, string[]> = {}
  for (const issue of error.issues) {
    const path = issue.path.join('.') || ('keys' in issue ? String((issue as { keys: string[] }).keys[0]) : 'body')
    fields[path] = [...(fields[path] ?? []), issue.message]
  }
  return fields
}
