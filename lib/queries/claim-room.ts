import 'server-only'
import { database } from '@/lib/db/client'
import { localMomentOf } from '@/lib/time/local-moment'

/** Somebody on the waiting list of a product, in the list's order. */
export interface WaitingHousehold {
  readonly preparationId: string
  readonly householdId: string
  readonly householdName: string
  readonly jars: number
  readonly takesFewer: boolean
}

/** A part of a claim that is offered and not answered. */
export interface OpenSplit {
  readonly id: string
  readonly preparationId: string
  readonly fromId: string
  readonly fromName: string
  readonly toId: string
  readonly toName: string
  readonly jars: number
}

/** A question to all claimants for another rule of sharing. */
export interface AskedRule {
  readonly id: string
  readonly toRule: string
  readonly agreed: readonly string[]
}

/** Jars that a household got from a waiting list; `at` on the kitchen's clock, "2027-08-20T08:15". */
export interface MovedUp {
  readonly preparationId: string
  readonly householdId: string
  readonly householdName: string
  readonly jars: number
  readonly at: string
}

/** What the claims pages show beside products and claims. */
export interface ClaimRoom {
  readonly waiting: readonly WaitingHousehold[]
  readonly splits: readonly OpenSplit[]
  readonly askedRule: AskedRule | null
  /** Newest first. */
  readonly moves: readonly MovedUp[]
  /** The most jars of a product for one household, by product; without those that have no cap. */
  readonly caps: ReadonlyMap<string, number>
  /** Everybody in the group, by name: to whom a part of a claim may be offered. */
  readonly households: readonly { readonly id: string; readonly name: string }[]
  /** Households that promised produce or hours: they may ask earlier. */
  readonly headStart: ReadonlySet<string>
}

const MOST_MOVES = 20

/** Waiting lists, open splits, caps, the open question and the newest moves of a day, and who is in the group. Seven statements. */
export async function claimRoom(groupId: string, dayId: string, timeZone: string): Promise<ClaimRoom> {
  const db = database()
  const [waiting, splits, asked, moves, caps, promised, households] = await Promise.all([
    db.$queryRaw<WaitingHousehold[]>`
      SELECT w.preparation_id AS "preparationId", w.household_id AS "householdId", h.name AS "householdName", w.jars, w.takes_fewer AS "takesFewer"
      FROM waiting w JOIN preparation p ON p.group_id = w.group_id AND p.id = w.preparation_id
      JOIN household h ON h.group_id = w.group_id AND h.id = w.household_id
      WHERE p.group_id = ${groupId} AND p.day_id = ${dayId} ORDER BY p.letter, w.place`,
    db.$queryRaw<OpenSplit[]>`
      SELECT s.id, s.preparation_id AS "preparationId", s.jars, f.id AS "fromId", f.name AS "fromName", t.id AS "toId", t.name AS "toName"
      FROM claim_split s JOIN preparation p ON p.group_id = s.group_id AND p.id = s.preparation_id
      JOIN household f ON f.group_id = s.group_id AND f.id = s.from_household_id
      JOIN household t ON t.group_id = s.group_id AND t.id = s.to_household_id
      WHERE p.group_id = ${groupId} AND p.day_id = ${dayId} AND s.state = 'offered' ORDER BY s.offered_at, s.id`,
    db.$queryRaw<AskedRule[]>`
      SELECT r.id, r.to_rule AS "toRule", coalesce((SELECT array_agg(a.household_id ORDER BY a.household_id) FROM rule_agreement a
        WHERE a.group_id = r.group_id AND a.rule_change_id = r.id), '{}') AS agreed
      FROM rule_change r WHERE r.group_id = ${groupId} AND r.day_id = ${dayId} AND r.state = 'asked'`,
    db.$queryRaw<(Omit<MovedUp, 'at'> & { recordedAt: Date })[]>`
      SELECT m.detail->>'preparationId' AS "preparationId", h.id AS "householdId", h.name AS "householdName", (m.detail->>'fromList')::int AS jars,
        m.recorded_at AS "recordedAt"
      FROM history m JOIN household h ON h.group_id = m.group_id AND h.id = m.detail->>'householdId'
      WHERE m.group_id = ${groupId} AND m.day_id = ${dayId} AND m.detail ? 'fromList' ORDER BY m.number DESC LIMIT ${MOST_MOVES}`,
    db.preparation.findMany({ where: { groupId, dayId, householdCap: { not: null } }, select: { id: true, householdCap: true } }),
    db.pledge.findMany({
      where: { groupId, dayId, kind: { in: ['produce', 'hours'] } },
      distinct: ['householdId'],
      select: { householdId: true },
    }),
    db.household.findMany({ where: { groupId, leftAt: null }, orderBy: { name: 'asc' }, select: { id: true, name: true } }),
  ])
  return {
    waiting,
    splits,
    askedRule: asked[0] ?? null,
    moves: moves.map(({ recordedAt, ...move }) => ({ ...move, at: localMomentOf(recordedAt, timeZone) })),
    caps: new Map(caps.flatMap(({ id, householdCap }) => (householdCap === null ? [] : [[id, householdCap] as const]))),
    households,
    headStart: new Set(promised.map(({ householdId }) => householdId)),
  }
}
