import 'server-only'
import { database } from '@/lib/db/client'
import { ownRecipeColumn, recipeOf } from '@/lib/stores/recipes'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { JarState } from '@/shared/lifecycle/jar-states'
import { productName } from '@/shared/day/product-name'
import { isoDate } from '@/shared/time/calendar-date'

/** What anybody may know who holds the jar: no person and no household is in it. */
export interface PublicJar {
  readonly serial: string
  readonly shortName: string
  readonly state: JarState
  readonly product: string
  readonly jarSize: JarSize
  readonly allergens: readonly string[]
  readonly lotNumber: string | null
  /** No process: kept cold from the start. */
  readonly isCold: boolean
  /** ISO date. */
  readonly cannedOn: string
  readonly group: string
  readonly askLine: string
}

interface Row extends Omit<PublicJar, 'product' | 'cannedOn'> {
  readonly recipeId: string
  readonly ownRecipe: unknown
  readonly date: Date
  readonly allergens: string[]
}

/** Reads a jar by its serial for whoever has the jar in hand; null when nobody has it. One statement. */
export async function publicJar(serial: string): Promise<PublicJar | null> {
  const [row] = await database().$queryRaw<Row[]>`
    SELECT j.serial, j.short_name AS "shortName", j.state, r.recipe_id AS "recipeId", ${ownRecipeColumn('r')}, r.jar_size AS "jarSize", t.lot_number AS "lotNumber",
      r.process_row_key IS NULL AS "isCold", d.date,
      g.name AS "group", g.ask_line AS "askLine",
      coalesce((SELECT array_agg(DISTINCT a) FROM batch_ingredient i
        JOIN ingredient_lot l ON l.group_id = i.group_id AND l.id = i.lot_id, unnest(l.allergens) a
        WHERE i.group_id = b.group_id AND i.batch_id = b.id), '{}') AS allergens
    FROM jar j JOIN "group" g ON g.id = j.group_id
      JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      JOIN day d ON d.group_id = j.group_id AND d.id = j.day_id
      LEFT JOIN lot t ON t.group_id = j.group_id AND t.id = j.lot_id
    WHERE j.serial = ${serial}`
  if (!row) return null
  const { recipeId, ownRecipe, date, allergens, ...jar } = row
  const recipe = recipeOf({ recipeId, ownRecipe })
  return {
    ...jar,
    product: productName(recipe.title),
    allergens: [...new Set([...recipe.allergens, ...allergens])],
    cannedOn: isoDate(date),
  }
}
