import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import type { Claim } from '@/shared/allocation/share-table'
import { whoAvoids } from '@/shared/day/who-avoids'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { recipeById } from '@/shared/recipes/recipe-library'

/** What one product's jars are shared by: who asked, who must not have it, and which jars sealed. */
export interface ShareInput {
  readonly preparationId: string
  readonly recipeId: string
  readonly title: string
  readonly letter: string
  readonly jarSize: JarSize
  /** Of the recipe, and of every ingredient lot that went into its batches. */
  readonly allergens: readonly string[]
  readonly claims: readonly Claim[]
  /** Sealed jars in the order of their short names; held, recalled and unsealed ones are not among them. */
  readonly sealed: readonly {
    readonly id: string
    readonly shortName: string
    readonly serial: string
    readonly householdId: string | null
  }[]
  readonly unchecked: number
}

/** Reads what a day's jars are shared by, product by product, in five statements whatever their number. */
export async function shareInput(tx: Tx, groupId: string, dayId: string): Promise<ShareInput[]> {
  const households = await tx.household.findMany({
    where: { groupId },
    select: { id: true, name: true, allergens: true, people: { where: { active: true }, select: { name: true, allergies: true } } },
  })
  const preparations = await tx.preparation.findMany({
    where: { groupId, dayId },
    orderBy: { letter: 'asc' },
    select: { id: true, recipeId: true, letter: true, jarSize: true, claims: { select: { householdId: true, jars: true } } },
  })
  const lots = await tx.$queryRaw<{ preparationId: string; allergens: string[] }[]>`
    SELECT DISTINCT b.preparation_id AS "preparationId", l.allergens
    FROM kettle_batch b JOIN batch_ingredient i ON i.group_id = b.group_id AND i.batch_id = b.id
      JOIN ingredient_lot l ON l.group_id = i.group_id AND l.id = i.lot_id
    WHERE b.group_id = ${groupId} AND b.day_id = ${dayId} AND cardinality(l.allergens) > 0`
  const jars = await tx.$queryRaw<
    { id: string; shortName: string; serial: string; householdId: string | null; state: string; preparationId: string }[]
  >`
    SELECT j.id, j.short_name AS "shortName", j.serial, j.household_id AS "householdId", j.state, b.preparation_id AS "preparationId"
    FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
    WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND j.state IN ('filled', 'processed', 'sealed', 'shared-out')
    ORDER BY length(j.short_name), j.short_name`
  return preparations.map(({ id, recipeId, letter, jarSize, claims }) => {
    const recipe = recipeById(recipeId)
    const ofLots = lots.filter((lot) => lot.preparationId === id).flatMap((lot) => lot.allergens)
    const allergens = [...new Set([...(recipe?.allergens ?? []), ...ofLots])]
    const own = jars.filter((jar) => jar.preparationId === id)
    return {
      preparationId: id,
      recipeId,
      title: recipe?.title ?? recipeId,
      letter,
      jarSize: jarSize as JarSize,
      allergens,
      claims: households.map((household) => ({
        householdId: household.id,
        householdName: household.name,
        jars: claims.find((claim) => claim.householdId === household.id)?.jars ?? 0,
        allergens: whoAvoids(allergens, household).map(({ allergen }) => allergen),
      })),
      sealed: own
        .filter(({ state }) => state === 'sealed' || state === 'shared-out')
        .map(({ id, shortName, serial, householdId }) => ({ id, shortName, serial, householdId })),
      unchecked: own.filter(({ state }) => state === 'filled' || state === 'processed').length,
    }
  })
}
