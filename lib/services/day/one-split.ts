import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { lockClaimed } from './claim-rows'

/** An offer of a part of a claim that nobody has answered yet; its preparation is locked. */
export interface OpenSplit {
  readonly id: string
  readonly preparationId: string
  readonly dayId: string
  readonly fromHouseholdId: string
  readonly toHouseholdId: string
  readonly jars: number
}

/**
 * Reads an open split under the lock of its preparation, whose day and household the caller has locked before.
 *
 * @param side - whose answer this is: it must be that household's own
 */
export async function lockSplit(
  tx: Tx,
  groupId: string,
  splitId: string,
  side: 'fromHouseholdId' | 'toHouseholdId',
  householdId: string,
): Promise<Result<OpenSplit, Refusal>> {
  const where = { groupId_id: { groupId, id: splitId } }
  const select = { id: true, preparationId: true, fromHouseholdId: true, toHouseholdId: true, jars: true, state: true } as const
  const found = await tx.claimSplit.findUnique({ where, select })
  if (!found || found[side] !== householdId) return refuse(notFound('Offer of jars'))
  const preparation = await lockClaimed(tx, groupId, found.preparationId)
  const split = preparation && (await tx.claimSplit.findUnique({ where, select }))
  if (!split) return refuse(notFound('Offer of jars'))
  return split.state === 'offered' ? ok({ ...split, dayId: preparation.dayId }) : refuse(ANSWERED)
}

/** Ends a split, one way or the other. */
export const settleSplit = (tx: Tx, groupId: string, id: string, state: 'accepted' | 'declined' | 'withdrawn', now: Date) =>
  tx.claimSplit.update({ where: { groupId_id: { groupId, id } }, data: { state, answeredAt: now } })

const ANSWERED = notNow(
  'split-answered',
  'Not saved: this offer was answered already.',
  'It was taken, declined or taken back.',
  'Load the page again to see how many jars you have.',
)
