import 'server-only'
import { database } from '@/lib/db/client'
import { ownRecipeColumn, recipeOf } from '@/lib/stores/recipes'
import type { Recipe } from '@/shared/recipes/recipe'

/** A jar of a load as the seal check sees it. */
export interface SealJar {
  readonly id: string
  readonly shortName: string
  readonly serial: string
  readonly state: string
  readonly seal: 'sealed' | 'unsealed' | null
  readonly whereNow: string
}

/** A load whose jars stand on the rack, or were checked. */
export interface SealLoad {
  readonly id: string
  readonly code: string
  readonly canner: string
  readonly recipe: Recipe
  readonly batches: readonly string[]
  readonly processedAt: number
  readonly emptiedAt: number
  readonly jars: readonly SealJar[]
}

type Row = SealJar &
  Omit<SealLoad, 'id' | 'jars' | 'batches' | 'recipe'> & {
    readonly loadId: string
    readonly batch: string
    readonly recipeId: string
    readonly ownRecipe: unknown
  }

/** Jars of the day by the load that they came out of last, in the order of the loads. One statement. */
export async function sealCheck(groupId: string, dayId: string): Promise<SealLoad[]> {
  const rows = await database().$queryRaw<Row[]>`
    SELECT j.id, j.short_name AS "shortName", j.serial, j.state, j.seal, j.where_now AS "whereNow", b.code AS batch, r.recipe_id AS "recipeId",
      ${ownRecipeColumn('r')},
      l.id AS "loadId", l.code, l.canner, l.processed_at AS "processedAt", l.emptied_at AS "emptiedAt"
    FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      JOIN LATERAL (
        SELECT c.id, c.code, k.label AS canner, c.processed_at, c.emptied_at
        FROM jar_load jl JOIN canner_load c ON c.group_id = jl.group_id AND c.id = jl.load_id
          JOIN canner k ON k.group_id = c.group_id AND k.id = c.canner_id
        WHERE jl.group_id = j.group_id AND jl.jar_id = j.id AND c.state = 'done' ORDER BY jl.turn DESC LIMIT 1) l ON true
    WHERE j.group_id = ${groupId} AND j.day_id = ${dayId}
    ORDER BY l.code, length(j.short_name), j.short_name`
  const loads = new Map<string, Row[]>()
  for (const row of rows) loads.set(row.loadId, [...(loads.get(row.loadId) ?? []), row])
  return [...loads].flatMap(([id, jars]) => {
    const [first] = jars
    if (!first) return []
    const { code, canner, processedAt, emptiedAt } = first
    return [
      {
        id,
        code,
        canner,
        recipe: recipeOf(first),
        processedAt,
        emptiedAt,
        batches: [...new Set(jars.map(({ batch }) => batch))],
        jars: jars.map(sealJar),
      },
    ]
  })
}

const sealJar = ({ id, shortName, serial, state, seal, whereNow }: Row): SealJar => ({ id, shortName, serial, state, seal, whereNow })
