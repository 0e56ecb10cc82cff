import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { notNow, type Refusal } from '@/shared/wording/refusal'
import type { LockedDay } from './lock-day'

/** A question to all claimants that is not settled yet. */
export interface OpenRuleChange {
  readonly id: string
  readonly toRule: string
  readonly agreed: readonly string[]
}

/** The households that ask for jars of a locked day, so that none comes or goes meanwhile. */
export async function claimantsOf(tx: Tx, groupId: string, dayId: string): Promise<string[]> {
  const rows = await tx.claim.findMany({
    where: { groupId, jars: { gt: 0 }, preparation: { dayId } },
    distinct: ['householdId'],
    select: { householdId: true },
    orderBy: { householdId: 'asc' },
  })
  return rows.map(({ householdId }) => householdId)
}

/** The question that is open for a locked day; null when there is none. */
export async function openRuleChange(tx: Tx, groupId: string, dayId: string): Promise<OpenRuleChange | null> {
  const row = await tx.ruleChange.findFirst({
    where: { groupId, dayId, state: 'asked' },
    select: { id: true, toRule: true, agreements: { select: { householdId: true } } },
  })
  return row && { id: row.id, toRule: row.toRule, agreed: row.agreements.map(({ householdId }) => householdId) }
}

/** Gives the day its new rule and settles the question. */
export async function makeRuleChange(
  tx: Tx,
  groupId: string,
  day: LockedDay,
  change: { id: string; toRule: string },
  now: Date,
): Promise<void> {
  await tx.day.update({ where: { groupId_id: { groupId, id: day.id } }, data: { shareRule: change.toRule, version: day.version + 1 } })
  await settleRuleChange(tx, groupId, change.id, 'made', now)
}

export const settleRuleChange = (tx: Tx, groupId: string, id: string, state: 'made' | 'refused' | 'withdrawn', now: Date) =>
  tx.ruleChange.update({ where: { groupId_id: { groupId, id } }, data: { state, settledAt: now } })

/** Why a day's rule may not be changed by one hand: households have asked for jars under the one that was published. Null when nobody has. */
export async function whyRuleStays(tx: Tx, groupId: string, dayId: string, rule: string): Promise<Refusal | null> {
  const { shareRule } = await tx.day.findUniqueOrThrow({ where: { groupId_id: { groupId, id: dayId } }, select: { shareRule: true } })
  if (shareRule === rule) return null
  const claimants = await claimantsOf(tx, groupId, dayId)
  return claimants.length === 0 ? null : ruleStays(claimants.length)
}

const ruleStays = (households: number): Refusal =>
  notNow(
    'rule-stays',
    'Not saved: the rule of sharing was published, and households have asked for jars under it.',
    `${households === 1 ? 'One household asks' : `${households} households ask`} for jars of this day.`,
    'Ask all of them on the claims page; the rule changes when every one has agreed.',
  )
