import 'server-only'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { inTransaction, type Tx } from '@/lib/db/in-transaction'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notSaved, type Refusal } from '@/shared/wording/refusal'
import { canonicalJson, sha256 } from './canonical-json'
import type { Reply } from './command'

/** One tap of one person: the key that their own client made for it, and what it says. */
export interface Tap {
  readonly key: string
  /** Whose tap it is: another person's use of the same key is refused. */
  readonly by: string
  readonly command: string
  /** What was sent, to tell a repeated tap from another one with the same key. It is kept as a hash: put no password into it. */
  readonly body: unknown
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
 * Does work in one transaction and keeps its reply under the tap's key; a repeated tap gets the kept reply and nothing is done again.
 *
 * A refusal rolls everything back and is not kept, so the same key may be tried again.
 */
export async function answerOnce(tap: Tap, work: (tx: Tx) => Promise<Result<Reply, Refusal>>): Promise<Result<Answer, Refusal>> {
  try {
    return await inTransaction(async (tx) => {
      const kept = await takeKey(tx, tap)
      if (kept) return ok({ reply: kept, replayed: true })
      const done = await work(tx)
      if (!done.ok) throw new Refused(done.problem)
      await tx.$executeRaw`UPDATE idempotent_request SET reply = ${JSON.stringify(done.value)}::jsonb WHERE key = ${tap.key}`
      return ok({ reply: done.value, replayed: false })
    })
  } catch (error) {
    if (error instanceof Refused) return refuse(error.refusal)
    if (error instanceof DatabaseUnavailable) return refuse(notSaved(error.isOutcomeUnknown))
    if (isTwin(error)) return refuse(TWIN)
    throw error
  }
}

/** Takes the key for this tap, or gives back what it was answered with. A second caller waits here until the first has committed. */
async function takeKey(tx: Tx, { key, by, command, body }: Tap): Promise<Reply | undefined> {
  const bodyHash = sha256(canonicalJson(body))
  const taken = await tx.$executeRaw`
    INSERT INTO idempotent_request (key, actor_id, command, body_hash) VALUES (${key}, ${by}, ${command}, ${bodyHash})
    ON CONFLICT (key) DO NOTHING`
  if (taken === 1) return undefined
  const kept = await tx.idempotentRequest.findUnique({ where: { key } })
  const same = kept && kept.actorId === by && kept.command === command && kept.bodyHash === bodyHash
  if (!same || !kept.reply) throw new Refused(KEY_USED)
  return kept.reply as Reply
}

/** Two people entered the same name at the same moment, and the database let one of them in (Prisma P2002, a unique index). */
const isTwin = (error: unknown): boolean => typeof error === 'object' && error !== null && 'code' in error && error.code === 'P2002'

const TWIN: Refusal = {
  code: 'entered-twice',
  status: 409,
  what: 'Not saved: somebody entered the same at this moment.',
  why: 'A name or a code of yours was taken while yours was on the way.',
  instead: 'Load the page again and look what is there.',
}

const KEY_USED: Refusal = {
  code: 'key-used-before',
  status: 409,
  what: 'Not saved: this entry was sent before with other contents.',
  instead: 'Load the page again and enter it once more.',
}
