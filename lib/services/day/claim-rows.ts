import 'server-only'
import { randomUUID } from 'node:crypto'
import type { HistoryLine } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { moveWaitingList } from '@/shared/allocation/move-waiting-list'
import { type Avoiding, whoAvoids } from '@/shared/day/who-avoids'

/**
 * A preparation whose row is locked: whoever changes its claims, its waiting list or its splits holds this lock, so they take their turns.
 * Locks are taken in the order day, household, preparations by id, head of the history.
 */
export interface ClaimedPreparation {
  readonly id: string
  readonly dayId: string
  readonly offered: number
  readonly claimed: number
  /** Jars waited for. */
  readonly waiting: number
}

/** Locks a preparation of this group; null when there is none. The caller has locked its day before. */
export async function lockClaimed(tx: Tx, groupId: string, preparationId: string): Promise<ClaimedPreparation | null> {
  const [row] = await tx.$queryRaw<ClaimedPreparation[]>`
    SELECT id, day_id AS "dayId", offered, claimed, waiting FROM preparation
    WHERE group_id = ${groupId} AND id = ${preparationId} FOR NO KEY UPDATE`
  return row ?? null
}

/** What one household asks for, of a locked preparation; no id when it never did. */
export async function claimOf(
  tx: Tx,
  groupId: string,
  preparationId: string,
  householdId: string,
): Promise<{ id: string | null; jars: number }> {
  const row = await tx.claim.findUnique({
    where: { groupId_preparationId_householdId: { groupId, preparationId, householdId } },
    select: { id: true, jars: true },
  })
  return row ?? { id: null, jars: 0 }
}

/** Adds to a household's claim, or takes from it; gives its id and what it is then. The sum is moved by whoever calls. */
export async function addToClaim(
  tx: Tx,
  groupId: string,
  preparationId: string,
  householdId: string,
  jars: number,
): Promise<{ id: string; jars: number }> {
  const [row] = await tx.$queryRaw<{ id: string; jars: number }[]>`
    INSERT INTO claim (group_id, id, preparation_id, household_id, jars) VALUES (${groupId}, ${randomUUID()}, ${preparationId}, ${householdId}, ${Math.max(0, jars)})
    ON CONFLICT (group_id, preparation_id, household_id) DO UPDATE SET jars = claim.jars + ${jars}, updated_at = now()
    RETURNING id, jars`
  if (!row) throw new Error(`the claim of ${householdId} on ${preparationId} is gone`)
  return row
}

/**
 * The guard: the sum of all claims moves only where the offer holds it.
 *
 * @returns the sums after it, or null when the offer is too small and nothing was moved
 */
export async function moveSum(tx: Tx, groupId: string, id: string, by: number): Promise<{ offered: number; claimed: number } | null> {
  const [moved] = await tx.$queryRaw<{ offered: number; claimed: number }[]>`
    UPDATE preparation SET claimed = claimed + ${by} WHERE group_id = ${groupId} AND id = ${id} AND claimed + ${by} <= offered
    RETURNING offered, claimed`
  return moved ?? null
}

/** Somebody on the waiting list, with what keeps the product off them. */
interface Wisher {
  readonly householdId: string
  readonly householdName: string
  readonly jars: number
  readonly place: number
  readonly takesFewer: boolean
  readonly household: Avoiding
}

/** What became of the list: jars given, and a line of history for each household that moved. */
export interface MovedList {
  readonly given: number
  readonly history: readonly HistoryLine[]
}

/**
 * Gives the free jars of a locked preparation to those who wait for them, in the order in which they asked.
 *
 * Whoever must not have the product by now is passed over and keeps the place: a list of allergens may be corrected.
 */
export async function moveList(tx: Tx, groupId: string, preparationId: string, allergens: readonly string[]): Promise<MovedList> {
  const now = await lockClaimed(tx, groupId, preparationId)
  if (!now || now.waiting === 0 || now.claimed >= now.offered) return { given: 0, history: [] }
  const list = (await readList(tx, groupId, preparationId)).filter(({ household }) => whoAvoids(allergens, household).length === 0)
  const moved = moveWaitingList(now.offered - now.claimed, list)
  const given = moved.given.reduce((sum, { jars }) => sum + jars, 0)
  if (given === 0) return { given, history: [] }
  if (!(await moveSum(tx, groupId, preparationId, given))) throw new Error(`the waiting list of ${preparationId} took more than is free`)
  const history: HistoryLine[] = []
  for (const { householdId, jars } of moved.given) {
    const claim = await addToClaim(tx, groupId, preparationId, householdId, jars)
    const detail = { preparationId, householdId, jars: claim.jars, before: claim.jars - jars, fromList: jars }
    history.push({ subject: `claim ${claim.id}`, detail, dayId: now.dayId })
  }
  await shortenList(tx, groupId, preparationId, moved.given)
  return { given, history }
}

function readList(tx: Tx, groupId: string, preparationId: string): Promise<Wisher[]> {
  return tx.$queryRaw<Wisher[]>`
    SELECT w.household_id AS "householdId", h.name AS "householdName", w.jars, w.place, w.takes_fewer AS "takesFewer",
      jsonb_build_object('allergens', coalesce(h.allergens, '{}'), 'people', (
        SELECT coalesce(jsonb_agg(jsonb_build_object('name', m.name, 'allergies', coalesce(m.allergies, '{}')) ORDER BY m.name), '[]')
        FROM person m WHERE m.group_id = h.group_id AND m.household_id = h.id AND m.active)) AS household
    FROM waiting w JOIN household h ON h.group_id = w.group_id AND h.id = w.household_id
    WHERE w.group_id = ${groupId} AND w.preparation_id = ${preparationId} AND h.left_at IS NULL ORDER BY w.place`
}

/** Takes from each wish what it was given; a wish that is met leaves the list. */
async function shortenList(
  tx: Tx,
  groupId: string,
  preparationId: string,
  given: readonly { householdId: string; jars: number }[],
): Promise<void> {
  const [households, jars] = [given.map(({ householdId }) => householdId), given.map((each) => each.jars)]
  await tx.$executeRaw`
    WITH got AS (SELECT * FROM unnest(${households}::text[], ${jars}::int[]) AS g (household, jars)),
    met AS (DELETE FROM waiting w USING got WHERE w.group_id = ${groupId} AND w.preparation_id = ${preparationId}
      AND w.household_id = got.household AND w.jars = got.jars),
    rest AS (UPDATE waiting w SET jars = w.jars - got.jars FROM got WHERE w.group_id = ${groupId} AND w.preparation_id = ${preparationId}
      AND w.household_id = got.household AND w.jars > got.jars)
    UPDATE preparation SET waiting = waiting - (SELECT sum(jars) FROM got) WHERE group_id = ${groupId} AND id = ${preparationId}`
}
