import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { ClaimJars } from '@/shared/forms/claim'
import type { DayState } from '@/shared/lifecycle/day-states'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { recipeById } from '@/shared/recipes/recipe-library'
import { ok, type Result, refuse } from '@/shared/result/result'
import { type Avoiding, whoAvoids } from '@/shared/day/who-avoids'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { sayAllergenRefusal } from '@/shared/wording/say-allergen-refusal'

/**
 * Asks for jars in the name of a household, changes how many, or gives them up with 0.
 *
 * The claim's own row is locked first; then one guarded statement moves the preparation's sum, so that claims never exceed the offer
 * however many ask at once. Few statements, since whoever asks for the same jars waits for them.
 */
export const claimJars = defineCommand({
  name: 'claim-jars',
  summary: 'Ask for jars',
  act: 'claim-jars',
  schema: ClaimJars,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId }, now }, { preparationId, householdId, jars }) {
    const preparation = await readForClaim(tx, groupId, preparationId, householdId)
    if (!preparation) return refuse(notFound('Product'))
    if (!preparation.household) return refuse(notFound('Household'))
    const recipe = recipeById(preparation.recipeId)
    if (!recipe) throw new Error(`preparation ${preparationId} names the recipe ${preparation.recipeId}, which is not in the library`)
    const closed = whyClosed(preparation, now)
    if (closed) return refuse(closed)
    const avoiding = whoAvoids(recipe.allergens, preparation.household)
    if (avoiding.length > 0 && jars > 0) return refuse(sayAllergenRefusal(recipe.title, avoiding))

    const claim = await lockClaim(tx, groupId, preparationId, householdId)
    const moved = await moveClaimed(tx, groupId, preparation, claim, jars)
    if (!moved.ok) return moved
    const reply = { claimId: claim.id, preparationId, householdId, jars, ...moved.value }
    const detail = { preparationId, householdId, jars, before: claim.jars }
    return ok({ reply, history: [{ subject: `claim ${claim.id}`, detail, dayId: preparation.dayId }] })
  },
})

interface ClaimedPreparation {
  readonly id: string
  readonly dayId: string
  readonly recipeId: string
  readonly jarSize: JarSize
  readonly state: DayState
  readonly claimsCloseAt: Date | null
  /** Null when the group has no such household. */
  readonly household: Avoiding | null
}

/** Shares the day with other claims, but not with a change of its state. */
async function readForClaim(tx: Tx, groupId: string, preparationId: string, householdId: string): Promise<ClaimedPreparation | undefined> {
  const [row] = await tx.$queryRaw<ClaimedPreparation[]>`
    SELECT p.id, p.day_id AS "dayId", p.recipe_id AS "recipeId", p.jar_size AS "jarSize", d.state, d.claims_close_at AS "claimsCloseAt",
      (SELECT jsonb_build_object('allergens', coalesce(h.allergens, '{}'), 'people', (
          SELECT coalesce(jsonb_agg(jsonb_build_object('name', m.name, 'allergies', coalesce(m.allergies, '{}')) ORDER BY m.name), '[]')
          FROM person m WHERE m.group_id = h.group_id AND m.household_id = h.id AND m.active))
        FROM household h WHERE h.group_id = ${groupId} AND h.id = ${householdId}) AS household
    FROM preparation p JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
    WHERE p.group_id = ${groupId} AND p.id = ${preparationId} FOR SHARE OF d`
  return row
}

interface LockedClaim {
  readonly id: string
  readonly jars: number
}

/** The claim of this household, made when it is the first; the others wait for it. */
async function lockClaim(tx: Tx, groupId: string, preparationId: string, householdId: string): Promise<LockedClaim> {
  const [claim] = await tx.$queryRaw<LockedClaim[]>`
    INSERT INTO claim (group_id, id, preparation_id, household_id, jars) VALUES (${groupId}, ${randomUUID()}, ${preparationId}, ${householdId}, 0)
    ON CONFLICT (group_id, preparation_id, household_id) DO UPDATE SET jars = claim.jars
    RETURNING id, jars`
  if (!claim) throw new Error(`the claim of ${householdId} on ${preparationId} is gone`)
  return claim
}

/** The guard: the sum moves only where the offer holds it, and the claim with it. */
async function moveClaimed(
  tx: Tx,
  groupId: string,
  { id, jarSize }: ClaimedPreparation,
  { id: claimId, jars: before }: LockedClaim,
  after: number,
): Promise<Result<{ offered: number; claimed: number }, Refusal>> {
  const [moved] = await tx.$queryRaw<{ offered: number; claimed: number }[]>`
    WITH moved AS (
      UPDATE preparation SET claimed = claimed - ${before} + ${after}
      WHERE group_id = ${groupId} AND id = ${id} AND claimed - ${before} + ${after} <= offered
      RETURNING offered, claimed),
    kept AS (UPDATE claim SET jars = ${after}, updated_at = now() FROM moved WHERE group_id = ${groupId} AND id = ${claimId})
    SELECT offered, claimed FROM moved`
  if (moved) return ok(moved)
  const left = await tx.preparation.findUniqueOrThrow({ where: { groupId_id: { groupId, id } }, select: { offered: true, claimed: true } })
  const most = left.offered - left.claimed + before
  return refuse({
    code: 'more-than-offered',
    status: 409,
    what: `Not saved: ${after} ${jarName(jarSize, after)} are more than there are.`,
    why: `Others have asked for ${left.claimed - before} of the ${left.offered} on offer.`,
    instead: most > 0 ? `Ask for at most ${most}.` : 'Ask the organiser whether more can be put up.',
    fields: { jars: [most > 0 ? `At most ${most}.` : 'None are left.'] },
  })
}

function whyClosed({ state, claimsCloseAt }: ClaimedPreparation, now: Date): Refusal | null {
  if (state === 'draft')
    return notNow('claims-not-open', 'Not saved: nobody can ask yet.', 'The day is a draft.', 'Wait until the organiser opens the claims.')
  const isOver = state !== 'claiming' || (claimsCloseAt !== null && now > claimsCloseAt)
  return isOver
    ? notNow('claims-closed', 'Not saved: the time for asking is over.', 'The jars are being planned or made.', 'Ask the organiser.')
    : null
}
