import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { ownRecipeColumn } from '@/lib/stores/recipes'
import type { DayState } from '@/shared/lifecycle/day-states'

/** What a change of a day decides on, read under a lock. */
export interface LockedDay {
  readonly id: string
  readonly name: string
  readonly state: DayState
  readonly version: number
  readonly kitchenId: string
  readonly claimsOpenAt: Date | null
  readonly claimsCloseAt: Date | null
}

/** Reads a day of this group and keeps others from changing it; null when there is none. */
export async function lockDay(tx: Tx, groupId: string, dayId: string): Promise<LockedDay | null> {
  const [day] = await tx.$queryRaw<LockedDay[]>`
    SELECT id, name, state, version, kitchen_id AS "kitchenId", claims_open_at AS "claimsOpenAt", claims_close_at AS "claimsCloseAt"
    FROM day WHERE group_id = ${groupId} AND id = ${dayId} FOR UPDATE`
  return day ?? null
}

/** A preparation with its day, locked so that neither moves on while it is changed. */
export interface LockedPreparation {
  readonly id: string
  readonly dayId: string
  readonly state: DayState
  readonly claimsCloseAt: Date | null
  readonly kitchenId: string
  readonly recipeId: string
  readonly ownRecipe: unknown
  readonly letter: string
  readonly jarSize: string
  /** Null: fridge or freezer. */
  readonly method: string | null
  readonly gauge: string | null
  readonly jarTreatment: string
  readonly offered: number
  readonly claimed: number
}

/** Reads a preparation of this group with its day under locks, the day first; null when there is none. */
export async function lockPreparation(tx: Tx, groupId: string, preparationId: string): Promise<LockedPreparation | null> {
  await tx.$queryRaw`
    SELECT d.id FROM day d JOIN preparation p ON p.group_id = d.group_id AND p.day_id = d.id
    WHERE p.group_id = ${groupId} AND p.id = ${preparationId} FOR UPDATE OF d`
  const [row] = await tx.$queryRaw<LockedPreparation[]>`
    SELECT p.id, p.day_id AS "dayId", d.state, d.claims_close_at AS "claimsCloseAt", d.kitchen_id AS "kitchenId", p.recipe_id AS "recipeId",
      ${ownRecipeColumn('p')},
      p.letter, p.jar_size AS "jarSize", p.method, p.gauge, p.jar_treatment AS "jarTreatment", p.offered, p.claimed
    FROM preparation p JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
    WHERE p.group_id = ${groupId} AND p.id = ${preparationId} FOR UPDATE OF p`
  return row ?? null
}
