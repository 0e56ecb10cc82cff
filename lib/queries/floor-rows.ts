import 'server-only'
import { Prisma } from '@/lib/db/generated/client'
import type { Tx } from '@/lib/db/in-transaction'
import { reliefsColumn } from '@/lib/queries/reliefs-column'
import { ownRecipeColumn, recipeOf } from '@/lib/stores/recipes'
import type { LoadClock } from '@/shared/floor/process-clock'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import type { BatchState } from '@/shared/lifecycle/batch-states'
import type { Recipe } from '@/shared/recipes/recipe'
import type { Relief } from '@/shared/wording/say-load'

/** A canner load as the floor's screens show it. */
export interface LoadRow extends LoadClock {
  readonly id: string
  readonly cannerId: string
  readonly canner: string
  readonly method: Method
  readonly gauge: Gauge | null
  readonly halfPints: number
  readonly pints: number
  readonly quarts: number
  readonly operatorId: string | null
  /** Who minds it now. */
  readonly operator: string | null
  /** Who took it over from whom. */
  readonly reliefs: readonly Relief[]
  readonly plannedLoadAt: number
  readonly plannedEmptyAt: number
  readonly processPsi: number | null
  readonly processRowKey: string | null
  readonly processEdition: string | null
  readonly processSource: string | null
  readonly note: string
  /** What is in it, once it is loaded. */
  readonly recipe: Recipe | null
  readonly jarSize: JarSize | null
  readonly batches: readonly string[]
  /** Jars in it that are whole. */
  readonly jars: number
  readonly broken: number
}

/** Loads of a day in the order of their codes, or one of them. One statement. */
export async function loadRows(db: Tx, groupId: string, dayId: string, loadId?: string): Promise<LoadRow[]> {
  const rows = await db.$queryRaw<(Omit<LoadRow, 'recipe'> & { recipeId: string | null; ownRecipe: unknown })[]>`
    SELECT l.id, l.code, l.state, l.canner_id AS "cannerId", c.label AS canner, c.method, c.gauge, c.half_pints AS "halfPints", c.pints, c.quarts,
      l.operator_id AS "operatorId", p.name AS operator, ${reliefsColumn}, l.planned_load_at AS "plannedLoadAt", l.planned_empty_at AS "plannedEmptyAt",
      l.process_minutes AS "processMinutes", l.process_psi AS "processPsi", l.process_row_key AS "processRowKey",
      l.process_edition AS "processEdition", l.process_source AS "processSource", l.loaded_at AS "loadedAt",
      l.at_temperature_at AS "atTemperatureAt", l.temperature_lost_at AS "temperatureLostAt", l.processed_at AS "processedAt",
      l.emptied_at AS "emptiedAt", l.restarts, l.note, i.recipe_id AS "recipeId", ${ownRecipeColumn('i')},
      i.jar_size AS "jarSize",
      coalesce(i.batches, '{}') AS batches, coalesce(i.jars, 0) AS jars, coalesce(i.broken, 0) AS broken
    FROM canner_load l JOIN canner c ON c.group_id = l.group_id AND c.id = l.canner_id
      LEFT JOIN person p ON p.group_id = l.group_id AND p.id = l.operator_id
      LEFT JOIN (
        SELECT jl.load_id, min(r.recipe_id) AS recipe_id, min(r.own_version) AS own_version, min(r.jar_size) AS jar_size, array_agg(DISTINCT b.code) AS batches,
          count(*) FILTER (WHERE j.state <> 'broken')::int AS jars, count(*) FILTER (WHERE j.state = 'broken')::int AS broken
        FROM jar_load jl JOIN jar j ON j.group_id = jl.group_id AND j.id = jl.jar_id
          JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
          JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
        WHERE jl.group_id = ${groupId} AND b.day_id = ${dayId}
        GROUP BY jl.load_id) i ON i.load_id = l.id
    WHERE l.group_id = ${groupId} AND l.day_id = ${dayId} ${only('l', loadId)}
    ORDER BY l.code`
  return rows.map(({ recipeId, ownRecipe, ...row }) => ({ ...row, recipe: recipeId === null ? null : recipeOf({ recipeId, ownRecipe }) }))
}

/** A kettle batch as the floor's screens show it. */
export interface BatchRow {
  readonly id: string
  readonly code: string
  readonly state: BatchState
  readonly kettleId: string | null
  readonly kettle: string | null
  readonly preparationId: string
  readonly recipe: Recipe
  /** No process: its jars go from the fill table to the fridge or the freezer, and no canner takes them. */
  readonly isCold: boolean
  readonly jarSize: JarSize
  readonly plannedStart: number
  readonly plannedFilled: number
  readonly plannedJars: number
  readonly startedAt: number | null
  /** When the first jar was filled; null where nobody noted it. */
  readonly fillingAt: number | null
  readonly filledAt: number | null
  readonly jarsFilled: number | null
  readonly note: string
  /** Jars that are filled and in no canner. */
  readonly waiting: number
}

/** Kettle batches of a day in the order they are planned, or one of them. One statement. */
export async function batchRows(db: Tx, groupId: string, dayId: string, batchId?: string): Promise<BatchRow[]> {
  const rows = await db.$queryRaw<(Omit<BatchRow, 'recipe'> & { recipeId: string; ownRecipe: unknown })[]>`
    SELECT b.id, b.code, b.state, b.kettle_id AS "kettleId", k.label AS kettle, b.preparation_id AS "preparationId", r.recipe_id AS "recipeId",
      ${ownRecipeColumn('r')}, r.process_row_key IS NULL AS "isCold", r.jar_size AS "jarSize", b.planned_start AS "plannedStart", b.planned_filled AS "plannedFilled", b.planned_jars AS "plannedJars",
      b.started_at AS "startedAt", b.filling_at AS "fillingAt", b.filled_at AS "filledAt", b.jars_filled AS "jarsFilled", b.note,
      (SELECT count(*)::int FROM jar j WHERE j.group_id = b.group_id AND j.batch_id = b.id AND j.state = 'filled' AND NOT EXISTS (
        SELECT FROM jar_load jl JOIN canner_load l ON l.group_id = jl.group_id AND l.id = jl.load_id
        WHERE jl.group_id = j.group_id AND jl.jar_id = j.id AND (l.state NOT IN ('done', 'failed') OR (l.state = 'done' AND j.seal IS NULL)))) AS waiting
    FROM kettle_batch b JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      LEFT JOIN kettle k ON k.group_id = b.group_id AND k.id = b.kettle_id
    WHERE b.group_id = ${groupId} AND b.day_id = ${dayId} ${only('b', batchId)}
    ORDER BY b.planned_start, b.code`
  return rows.map(({ recipeId, ownRecipe, ...row }) => ({ ...row, recipe: recipeOf({ recipeId, ownRecipe }) }))
}

const only = (table: 'l' | 'b', id: string | undefined): Prisma.Sql =>
  id === undefined ? Prisma.empty : table === 'l' ? Prisma.sql`AND l.id = ${id}` : Prisma.sql`AND b.id = ${id}`
