import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { type OfRecipe, ownRecipeColumn, recipeOf } from '@/lib/stores/recipes'
import { localMomentOf } from '@/lib/time/local-moment'
import { type ClaimCaps, capLimit } from '@/shared/allocation/claim-caps'
import { type ClaimTimes, claimWindow } from '@/shared/day/claim-window'
import { type Avoiding, whoAvoids } from '@/shared/day/who-avoids'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, type Result, refuse } from '@/shared/result/result'
import { sayOverCap, sayWindowRefusal } from '@/shared/wording/claim-refusal'
import { notFound, type Refusal } from '@/shared/wording/refusal'
import { sayAllergenRefusal } from '@/shared/wording/say-allergen-refusal'

/** What a household must pass before it asks for a product. The day is shared and the household locked until the transaction ends. */
export interface ForClaim {
  readonly preparationId: string
  readonly dayId: string
  readonly jarSize: JarSize
  readonly title: string
  readonly allergens: readonly string[]
  readonly caps: ClaimCaps
  readonly times: ClaimTimes
  readonly timeZone: string
  readonly household: Avoiding
  readonly hasHeadStart: boolean
  /** Jars that the household asks for and waits for of the day's other products. */
  readonly elsewhere: number
}

interface Row extends ClaimTimes, OfRecipe {
  readonly dayId: string
  readonly jarSize: JarSize
  readonly ofOffer: number | null
  readonly ofDay: number | null
  readonly timeZone: string
}

/** Reads the product, its day and the household, and locks what must not change meanwhile. */
export async function readForClaim(
  tx: Tx,
  groupId: string,
  preparationId: string,
  householdId: string,
): Promise<Result<ForClaim, Refusal>> {
  const [row] = await tx.$queryRaw<Row[]>`
    SELECT p.day_id AS "dayId", p.recipe_id AS "recipeId", p.jar_size AS "jarSize", ${ownRecipeColumn('p')}, p.household_cap AS "ofOffer", d.household_cap AS "ofDay",
      d.state, d.claims_open_at AS "claimsOpenAt", d.claims_close_at AS "claimsCloseAt", d.early_minutes AS "earlyMinutes",
      (SELECT time_zone FROM "group" WHERE id = d.group_id) AS "timeZone"
    FROM preparation p JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
    WHERE p.group_id = ${groupId} AND p.id = ${preparationId} FOR SHARE OF d`
  if (!row) return refuse(notFound('Product'))
  const { dayId, jarSize, ofOffer, ofDay, timeZone, state, claimsOpenAt, claimsCloseAt, earlyMinutes } = row
  const times = { state, claimsOpenAt, claimsCloseAt, earlyMinutes }
  const household = await lockClaimant(tx, groupId, householdId, dayId)
  if (!household) return refuse(notFound('Household'))
  const elsewhere = ofDay === null ? 0 : await askedElsewhere(tx, groupId, dayId, preparationId, householdId)
  const { title, allergens } = recipeOf(row)
  return ok({ preparationId, dayId, jarSize, title, allergens, caps: { ofOffer, ofDay }, times, timeZone, elsewhere, ...household })
}

/** The household, kept from asking for two products at the same moment and from leaving meanwhile. */
async function lockClaimant(tx: Tx, groupId: string, householdId: string, dayId: string) {
  const [row] = await tx.$queryRaw<{ household: Avoiding; hasHeadStart: boolean }[]>`
    SELECT jsonb_build_object('allergens', coalesce(h.allergens, '{}'), 'people', (
        SELECT coalesce(jsonb_agg(jsonb_build_object('name', m.name, 'allergies', coalesce(m.allergies, '{}')) ORDER BY m.name), '[]')
        FROM person m WHERE m.group_id = h.group_id AND m.household_id = h.id AND m.active)) AS household,
      EXISTS (SELECT FROM pledge g WHERE g.group_id = h.group_id AND g.household_id = h.id AND g.day_id = ${dayId}
        AND g.kind IN ('produce', 'hours')) AS "hasHeadStart"
    FROM household h WHERE h.group_id = ${groupId} AND h.id = ${householdId} AND h.left_at IS NULL FOR NO KEY UPDATE OF h`
  return row
}

async function askedElsewhere(tx: Tx, groupId: string, dayId: string, preparationId: string, householdId: string): Promise<number> {
  const [row] = await tx.$queryRaw<{ jars: number }[]>`
    SELECT coalesce(sum(jars), 0)::int AS jars FROM (
      SELECT c.preparation_id, c.jars FROM claim c WHERE c.group_id = ${groupId} AND c.household_id = ${householdId}
      UNION ALL SELECT w.preparation_id, w.jars FROM waiting w WHERE w.group_id = ${groupId} AND w.household_id = ${householdId}) asked
    JOIN preparation p ON p.group_id = ${groupId} AND p.id = asked.preparation_id AND p.day_id = ${dayId} AND p.id <> ${preparationId}`
  return row?.jars ?? 0
}

/** Why this household may not ask now: too early or late, or its list names what is in the product. Null when it may. */
export function whyNotAsk(asking: ForClaim, now: Date, jars: number): Refusal | null {
  const { times, timeZone, hasHeadStart } = asking
  const window = claimWindow(times, now, hasHeadStart)
  const closed = sayWindowRefusal(window, window.kind === 'not-yet' ? localMomentOf(window.from, timeZone) : '')
  return closed ?? (jars > 0 ? refuseAllergens(asking) : null)
}

/** Why the household must not have the product; null when nothing in it is on its list. */
export function refuseAllergens({ title, allergens, household }: ForClaim): Refusal | null {
  const avoiding = whoAvoids(allergens, household)
  return avoiding.length > 0 ? sayAllergenRefusal(title, avoiding) : null
}

/** Why a household may not have so many in all, claimed and waited for; null when it may. Whoever asks for no more than before always may. */
export function overCap({ caps, elsewhere, jarSize }: ForClaim, before: number, after: number): Refusal | null {
  const limit = capLimit(caps, elsewhere)
  return limit && after > before && after > limit.most ? sayOverCap(limit, after, jarSize) : null
}
