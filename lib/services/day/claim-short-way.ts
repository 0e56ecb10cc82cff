import 'server-only'
import { randomUUID } from 'node:crypto'
import { canonicalJson, sha256 } from '@/lib/commands/canonical-json'
import type { Reply } from '@/lib/commands/command'
import type { ShortTap } from '@/lib/commands/short-way'
import { databasePool } from '@/lib/db/client'
import { DatabaseUnavailable, isDatabaseUnavailable, isTransactionConflict } from '@/lib/db/database-unavailable'
import { noteDatabaseAway } from '@/lib/request-state'
import { ClaimJars } from '@/shared/forms/claim'
import { RECIPES } from '@/shared/recipes/recipe-library'
import { noticeClaims } from './notice-claims'

/** The function that does it; see the migration of the same name. Named, so that each connection plans it once. */
const CLAIM = {
  name: 'claim-the-short-way',
  text: `SELECT (done).reply, (done).of_day FROM (
    SELECT claim_the_short_way($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15) AS done
    WHERE clock_timestamp() < $16::timestamptz OFFSET 0) AS in_time`,
}

/** A database that was away must not save, when it comes back, what somebody was told about long ago. It is asked by its own clock. */
const BEGINS_WITHIN_MS = 1_000

/** What the function says when it undoes itself: the key was taken meanwhile, or too many changes in this minute. */
const UNDONE = 'LS001'

/** Products in which there is nothing to avoid, by every id they are known under. */
const PLAIN_RECIPES = RECIPES.filter(({ allergens }) => allergens.length === 0).flatMap(({ id, alsoKnownAs }) => [id, ...alsoKnownAs])

const MINUTE_MS = 60_000

/** A claim within an open window, an offer that holds it and no list that waits for it: who asks for jars when the claims open. */
export async function claimTheShortWay(tap: ShortTap): Promise<Reply | null> {
  const { key, userId, sessionVersion, groupId, roles, input, mostAMinute, now } = tap
  const parsed = ClaimJars.safeParse(input)
  if (!parsed.success) return null
  const { preparationId, householdId, jars } = parsed.data
  const hash = sha256(canonicalJson({ groupId, input }))
  const minute = new Date(Math.floor(now.getTime() / MINUTE_MS) * MINUTE_MS)
  const values = [
    ...[key, hash, userId, sessionVersion, roles.any, roles.own, minute, mostAMinute],
    ...[groupId, preparationId, householdId, jars, randomUUID(), PLAIN_RECIPES, now.toISOString()],
    new Date(now.getTime() + BEGINS_WITHIN_MS),
  ]
  const connection = await databasePool().connect().catch(orUnavailable(false))
  try {
    const { rows } = await connection.query<{ reply: Reply | null; of_day: string }>({ ...CLAIM, values })
    connection.release()
    const [done] = rows
    if (!done?.reply) return null
    noticeClaims(groupId, done.of_day)
    return done.reply
  } catch (error) {
    const isUndoneOnly = isUndone(error) || isTransactionConflict(error)
    connection.release(!isUndoneOnly)
    // The answer may be lost after the save: the same key finds out.
    return isUndoneOnly ? null : orUnavailable(true)(error)
  }
}

const orUnavailable =
  (isOutcomeUnknown: boolean) =>
  (error: unknown): never => {
    throw isDatabaseUnavailable(error) ? noteDatabaseAway(new DatabaseUnavailable(error, { isOutcomeUnknown })) : error
  }

const isUndone = (error: unknown): boolean => typeof error === 'object' && error !== null && 'code' in error && error.code === UNDONE
