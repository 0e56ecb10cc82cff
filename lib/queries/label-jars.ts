import 'server-only'
import { database } from '@/lib/db/client'
import { Prisma } from '@/lib/db/generated/client'
import { env } from '@/lib/env'
import { ownRecipeColumn, recipeOf } from '@/lib/stores/recipes'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import { productName } from '@/shared/day/product-name'
import type { Recipe } from '@/shared/recipes/recipe'
import { isoDate } from '@/shared/time/calendar-date'
import type { LabelFacts } from '@/shared/trace/label-facts'
import { labelPattern } from '@/shared/trace/label-pattern'
import { sayLabelProcess } from '@/shared/wording/say-label-process'

/** A label with the batch and load that its jar belongs to. */
export interface DayLabel extends LabelFacts {
  readonly batch: string
  readonly load: string
  readonly canner: string
  readonly produce: Recipe['pattern']
}

interface Row {
  readonly serial: string
  readonly shortName: string
  readonly batch: string
  readonly recipeId: string
  readonly ownRecipe: unknown
  readonly jarSize: JarSize
  /** No process, kept cold: null with everything of a load. */
  readonly isCold: boolean
  /** Null for jars kept cold that were filled before these had lots. */
  readonly lotNumber: string | null
  readonly load: string | null
  readonly canner: string | null
  readonly method: Method | null
  readonly processMinutes: number | null
  readonly processPsi: number | null
  readonly elevationFeet: number
  readonly date: Date
  readonly group: string
  readonly allergens: string[]
}

/**
 * Labels of the day's sealed jars, those of one batch or all, in the order of their short names. A jar that is not sealed gets none, but for those of a
 * product without a process: theirs say that they are kept cold. One statement.
 */
export async function labelJars(groupId: string, dayId: string, batch?: string): Promise<DayLabel[]> {
  const rows = await database().$queryRaw<Row[]>`
    SELECT j.serial, j.short_name AS "shortName", b.code AS batch, r.recipe_id AS "recipeId", ${ownRecipeColumn('r')},
      r.jar_size AS "jarSize", r.process_row_key IS NULL AS "isCold", t.lot_number AS "lotNumber",
      l.code AS load, l.canner, l.method, l.process_minutes AS "processMinutes", l.process_psi AS "processPsi", k.elevation_feet AS "elevationFeet",
      d.date, g.name AS "group",
      coalesce((SELECT array_agg(DISTINCT a) FROM batch_ingredient i
        JOIN ingredient_lot il ON il.group_id = i.group_id AND il.id = i.lot_id, unnest(il.allergens) a
        WHERE i.group_id = b.group_id AND i.batch_id = b.id), '{}') AS allergens
    FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      LEFT JOIN lot t ON t.group_id = j.group_id AND t.id = j.lot_id
      JOIN day d ON d.group_id = j.group_id AND d.id = j.day_id
      JOIN kitchen k ON k.group_id = d.group_id AND k.id = d.kitchen_id
      JOIN "group" g ON g.id = j.group_id
      LEFT JOIN LATERAL (
        SELECT c.code, c.process_minutes, c.process_psi, n.label AS canner, n.method
        FROM jar_load jl JOIN canner_load c ON c.group_id = jl.group_id AND c.id = jl.load_id
          JOIN canner n ON n.group_id = c.group_id AND n.id = c.canner_id
        WHERE jl.group_id = j.group_id AND jl.jar_id = j.id AND c.state = 'done' ORDER BY jl.turn DESC LIMIT 1) l ON true
    WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND (${HAS_A_LABEL}) AND (${batch ?? null}::text IS NULL OR b.code = ${batch ?? null})
    ORDER BY b.planned_start, length(j.short_name), j.short_name`
  const origin = env().baseUrl
  return rows.map((row) => {
    const { serial, batch: code, group, jarSize, shortName, date, load, canner } = row
    const recipe = recipeOf(row)
    return {
      ...{ serial, group, batch: code, load: load ?? '', canner: canner ?? '', size: jarSize, jarLabel: shortName, origin },
      product: productName(recipe.title),
      produce: recipe.pattern,
      pattern: labelPattern(recipe.pattern),
      allergens: [...new Set([...recipe.allergens, ...row.allergens])],
      cannedOn: isoDate(date),
      lotNumber: row.lotNumber ?? 'none',
      ...(row.isCold && { isCold: true }),
      process: processOf(row),
    }
  })
}

/** Sealed out of a load and with its lot, or of a product that no canner takes. */
const HAS_A_LABEL = Prisma.sql`(j.state IN ('sealed', 'shared-out') AND t.lot_number IS NOT NULL AND l.code IS NOT NULL)
  OR (j.state = 'unsealed' AND r.process_row_key IS NULL)`

function processOf({ method, processMinutes, processPsi, elevationFeet }: Row): string {
  return method === null || processMinutes === null ? '' : sayLabelProcess(method, processMinutes, processPsi, elevationFeet)
}

/** A batch with jars that get labels. */
export interface LabelBatch {
  readonly code: string
  readonly title: string
  readonly jars: number
}

/** Batches of the day that have sealed jars, or jars that are kept cold, with how many, in the order of the plan. One statement. */
export async function labelBatches(groupId: string, dayId: string): Promise<LabelBatch[]> {
  const rows = await database().$queryRaw<{ code: string; recipeId: string; ownRecipe: unknown; jars: number }[]>`
  SELECT b.code, r.recipe_id AS "recipeId", ${ownRecipeColumn('r')}, count(*)::int AS jars
  FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
    JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
  WHERE j.group_id = ${groupId} AND j.day_id = ${dayId}
    AND (j.state IN ('sealed', 'shared-out') OR (j.state = 'unsealed' AND r.process_row_key IS NULL))
  GROUP BY b.code, r.group_id, r.recipe_id, r.own_version, b.planned_start ORDER BY b.planned_start, b.code`
  return rows.map(({ code, jars, ...row }) => ({ code, jars, title: recipeOf(row).title }))
}
