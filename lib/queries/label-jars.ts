import 'server-only'
import { database } from '@/lib/db/client'
import { env } from '@/lib/env'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import { productName } from '@/shared/day/product-name'
import { recipeById } from '@/shared/recipes/recipe-library'
import { isoDate } from '@/shared/time/calendar-date'
import type { LabelFacts } from '@/shared/trace/label-facts'
import { labelPattern } from '@/shared/trace/label-pattern'
import { sayLabelProcess } from '@/shared/wording/say-label-process'

/** A label with the batch and load that its jar belongs to. */
export interface DayLabel extends LabelFacts {
  readonly batch: string
  readonly load: string
  readonly canner: string
  readonly recipeId: string
}

interface Row {
  readonly serial: string
  readonly shortName: string
  readonly batch: string
  readonly recipeId: string
  readonly jarSize: JarSize
  readonly lotNumber: string
  readonly load: string
  readonly canner: string
  readonly method: Method
  readonly processMinutes: number
  readonly processPsi: number | null
  readonly elevationFeet: number
  readonly date: Date
  readonly group: string
  readonly allergens: string[]
}

/** Labels of the day's sealed jars, those of one batch or all, in the order of their short names. A jar that is not sealed gets none. One statement. */
export async function labelJars(groupId: string, dayId: string, batch?: string): Promise<DayLabel[]> {
  const rows = await database().$queryRaw<Row[]>`
    SELECT j.serial, j.short_name AS "shortName", b.code AS batch, r.recipe_id AS "recipeId", r.jar_size AS "jarSize", t.lot_number AS "lotNumber",
      l.code AS load, l.canner, l.method, l.process_minutes AS "processMinutes", l.process_psi AS "processPsi", k.elevation_feet AS "elevationFeet",
      d.date, g.name AS "group",
      coalesce((SELECT array_agg(DISTINCT a) FROM batch_ingredient i
        JOIN ingredient_lot il ON il.group_id = i.group_id AND il.id = i.lot_id, unnest(il.allergens) a
        WHERE i.group_id = b.group_id AND i.batch_id = b.id), '{}') AS allergens
    FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      JOIN lot t ON t.group_id = j.group_id AND t.id = j.lot_id
      JOIN day d ON d.group_id = j.group_id AND d.id = j.day_id
      JOIN kitchen k ON k.group_id = d.group_id AND k.id = d.kitchen_id
      JOIN "group" g ON g.id = j.group_id
      JOIN LATERAL (
        SELECT c.code, c.process_minutes, c.process_psi, n.label AS canner, n.method
        FROM jar_load jl JOIN canner_load c ON c.group_id = jl.group_id AND c.id = jl.load_id
          JOIN canner n ON n.group_id = c.group_id AND n.id = c.canner_id
        WHERE jl.group_id = j.group_id AND jl.jar_id = j.id AND c.state = 'done' ORDER BY jl.turn DESC LIMIT 1) l ON true
    WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND j.state IN ('sealed', 'shared-out') AND (${batch ?? null}::text IS NULL OR b.code = ${batch ?? null})
    ORDER BY b.planned_start, length(j.short_name), j.short_name`
  const origin = env().baseUrl
  return rows.map(({ method, processMinutes, processPsi, elevationFeet, date, allergens, shortName, jarSize, recipeId, ...row }) => {
    const recipe = recipeById(recipeId)
    return {
      ...row,
      recipeId,
      product: productName(recipe?.title ?? recipeId),
      size: jarSize,
      pattern: labelPattern(recipe?.pattern),
      allergens: [...new Set([...(recipe?.allergens ?? []), ...allergens])],
      cannedOn: isoDate(date),
      process: sayLabelProcess(method, processMinutes, processPsi, elevationFeet),
      jarLabel: shortName,
      origin,
    }
  })
}

/** Batches of the day that have sealed jars, with how many, in the order of the plan. One statement. */
export const labelBatches = (groupId: string, dayId: string): Promise<{ code: string; recipeId: string; jars: number }[]> => database()
  .$queryRaw`
  SELECT b.code, r.recipe_id AS "recipeId", count(*)::int AS jars
  FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
    JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
  WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND j.state IN ('sealed', 'shared-out')
  GROUP BY b.code, r.recipe_id, b.planned_start ORDER BY b.planned_start, b.code`
