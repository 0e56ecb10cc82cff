import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { recipesOfDay } from '@/lib/stores/recipes'
import { type Claim, DEFAULT_SHARE_RULE, type ShareRule } from '@/shared/allocation/share-table'
import { givenToDay } from './given-to-day'
import { whoAvoids } from '@/shared/day/who-avoids'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { ProducePattern } from '@/shared/recipes/recipe'
import { type Shared, shareDay } from '@/shared/share/share-day'

/** Where a jar stands that no canner takes, until somebody has it. */
export const COLD_PLACE = 'fridge or freezer'

/** Jars that may be given to a household: sealed, or kept cold because their product has no process. */
export const TO_HAND_OVER = [
  { state: 'sealed' },
  { state: 'unsealed', whereNow: COLD_PLACE, batch: { preparation: { processRowKey: null } } },
]

/** What one product's jars are shared by: who asked, who must not have it, and which jars sealed. */
export interface ShareInput {
  readonly preparationId: string
  readonly recipeId: string
  readonly title: string
  readonly pattern: ProducePattern
  /** Fridge or freezer: its jars are shared out as they were filled, and nobody checks a seal. */
  readonly isCold: boolean
  readonly letter: string
  readonly jarSize: JarSize
  /** Of the recipe, and of every ingredient lot that went into its batches. */
  readonly allergens: readonly string[]
  readonly claims: readonly Claim[]
  /** Sealed jars in the order of their short names, of a cold product those kept cold; held, recalled and unsealed ones are not among them. */
  readonly sealed: readonly {
    readonly id: string
    readonly shortName: string
    readonly serial: string
    readonly householdId: string | null
    /** Whose glass it is, where that is known and they wish for it. */
    readonly wishedBy: string | null
  }[]
  readonly unchecked: number
}

/**
 * Reads what a day's jars are shared by, product by product, in six statements whatever their number; one to three more where the rule shares by hours or
 * produce.
 */
export async function shareInput(tx: Tx, groupId: string, dayId: string, rule: ShareRule = DEFAULT_SHARE_RULE): Promise<ShareInput[]> {
  const households = await tx.household.findMany({
    where: { groupId },
    select: { id: true, name: true, allergens: true, people: { where: { active: true }, select: { name: true, allergies: true } } },
  })
  const preparations = await tx.preparation.findMany({
    where: { groupId, dayId },
    orderBy: { letter: 'asc' },
    select: {
      ...{ id: true, recipeId: true, letter: true, jarSize: true, processRowKey: true },
      claims: { select: { householdId: true, jars: true } },
    },
  })
  const recipes = await recipesOfDay(tx, groupId, dayId)
  const lots = await tx.$queryRaw<{ preparationId: string; allergens: string[] }[]>`
    SELECT DISTINCT b.preparation_id AS "preparationId", l.allergens
    FROM kettle_batch b JOIN batch_ingredient i ON i.group_id = b.group_id AND i.batch_id = b.id
      JOIN ingredient_lot l ON l.group_id = i.group_id AND l.id = i.lot_id
    WHERE b.group_id = ${groupId} AND b.day_id = ${dayId} AND cardinality(l.allergens) > 0`
  const given = await givenToDay(tx, groupId, dayId, rule, true)
  const jars = await tx.$queryRaw<
    {
      id: string
      shortName: string
      serial: string
      householdId: string | null
      state: string
      preparationId: string
      wishedBy: string | null
    }[]
  >`
    SELECT j.id, j.short_name AS "shortName", j.serial, j.household_id AS "householdId", j.state, b.preparation_id AS "preparationId",
      w.household_id AS "wishedBy"
    FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation p ON p.group_id = b.group_id AND p.id = b.preparation_id
      LEFT JOIN supply_lot s ON s.group_id = j.group_id AND s.id = j.jar_lot_id
      LEFT JOIN own_jar_wish w ON w.group_id = j.group_id AND w.day_id = j.day_id AND w.household_id = s.household_id
    WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND (j.state IN ('filled', 'processed', 'sealed', 'shared-out')
      OR (j.state = 'unsealed' AND p.process_row_key IS NULL))
    ORDER BY length(j.short_name), j.short_name`
  return preparations.map(({ id, recipeId, letter, jarSize, claims, processRowKey }) => {
    const recipe = recipes.of(id)
    const ofLots = lots.filter((lot) => lot.preparationId === id).flatMap((lot) => lot.allergens)
    const allergens = [...new Set([...recipe.allergens, ...ofLots])]
    const own = jars.filter((jar) => jar.preparationId === id)
    return {
      preparationId: id,
      recipeId,
      title: recipe.title,
      pattern: recipe.pattern,
      isCold: processRowKey === null,
      letter,
      jarSize: jarSize as JarSize,
      allergens,
      claims: households.map((household) => ({
        householdId: household.id,
        householdName: household.name,
        jars: claims.find((claim) => claim.householdId === household.id)?.jars ?? 0,
        ...(rule.kind === 'by-contribution' ? { contribution: given.get(household.id) ?? 0 } : {}),
        allergens: whoAvoids(allergens, household).map(({ allergen }) => allergen),
      })),
      sealed: own
        .filter(({ state }) => state === 'sealed' || state === 'shared-out' || state === 'unsealed')
        .map(({ id, shortName, serial, householdId, wishedBy }) => ({ id, shortName, serial, householdId, wishedBy })),
      unchecked: own.filter(({ state }) => state === 'filled' || state === 'processed').length,
    }
  })
}

/** The tables of the day by its rule, in the order of the products. */
export function tablesOf(products: readonly ShareInput[], rule: ShareRule): Shared[] {
  const shared = shareDay(
    products.map(({ preparationId: id, recipeId, jarSize, sealed, claims }) => ({ id, recipeId, jarSize, jars: sealed.length, claims })),
    rule,
  )
  if (!shared.ok) throw new Error(`the shares of a day cannot be reckoned: ${shared.problem.kind}`)
  return shared.value
}
