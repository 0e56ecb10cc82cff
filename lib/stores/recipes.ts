import 'server-only'
import { Prisma } from '@/lib/db/generated/client'
import type { Tx } from '@/lib/db/in-transaction'
import { readOwnRecipe } from '@/shared/forms/saved-own-recipe'
import type { Recipe } from '@/shared/recipes/recipe'
import { recipeById } from '@/shared/recipes/recipe-library'
import { recipeOfOwn } from '@/shared/recipes/own-recipe-content'

/** A row that names a recipe: of the library, or with the version of the group's own that it was made with. */
export interface OfRecipe {
  readonly recipeId: string
  readonly ownRecipe: unknown
}

/**
 * The recipe of a preparation: one of the library, or the very version of the group's own that it was put on the day with.
 *
 * A preparation can only have been made with one of the two, so a missing one is our own broken promise.
 */
export function recipeOf({ recipeId, ownRecipe }: OfRecipe): Recipe {
  const recipe = ownRecipe ? recipeOfOwn(readOwnRecipe(recipeId, ownRecipe)) : recipeById(recipeId)
  if (!recipe) throw new Error(`the recipe ${recipeId} is neither in the library nor among the group's own`)
  return recipe
}

/** Recipes by the preparation that is made by them. */
export interface RecipesOfDay {
  readonly of: (preparationId: string) => Recipe
}

/**
 * The recipes of a day's preparations, by the preparation's id. One statement, however many of them are the group's own.
 *
 * @throws Error for a preparation that is not of this day
 */
export async function recipesOfDay(db: Tx, groupId: string, dayId: string): Promise<RecipesOfDay> {
  const rows = await db.$queryRaw<(OfRecipe & { id: string })[]>`
    SELECT p.id, p.recipe_id AS "recipeId", ${ownRecipeColumn('p')} FROM preparation p WHERE p.group_id = ${groupId} AND p.day_id = ${dayId}`
  const recipes = new Map(rows.map((row) => [row.id, recipeOf(row)]))
  return {
    of(preparationId) {
      const recipe = recipes.get(preparationId)
      if (!recipe) throw new Error(`preparation ${preparationId} is not of the day ${dayId}`)
      return recipe
    },
  }
}

/** Of one preparation's own recipe, what {@link recipeOf} reads, for its `select`; for those of a day take {@link recipesOfDay}. */
export const OWN_RECIPE = {
  select: {
    number: true,
    content: true,
    foodId: true,
    pack: true,
    method: true,
    gauge: true,
    conditions: { where: { withdrawnAt: null }, select: { condition: true, statement: true, edition: true } },
  },
} as const

/** The same within a statement of SQL, as the column "ownRecipe"; null where the recipe is of the library. */
export function ownRecipeColumn(preparation: keyof typeof KEYS): Prisma.Sql {
  const { group, recipe, version } = KEYS[preparation]
  return Prisma.sql`(
    SELECT jsonb_build_object('number', v.number, 'content', v.content, 'foodId', v.food_id, 'pack', v.pack, 'method', v.method, 'gauge', v.gauge,
      'conditions', coalesce((SELECT jsonb_agg(jsonb_build_object('condition', c.condition, 'statement', c.statement, 'edition', c.edition))
        FROM own_recipe_condition c
        WHERE c.group_id = v.group_id AND c.recipe_id = v.recipe_id AND c.version = v.number AND c.withdrawn_at IS NULL), '[]'))
    FROM own_recipe_version v
    WHERE v.group_id = ${group} AND v.recipe_id = ${recipe} AND v.number = ${version}) AS "ownRecipe"`
}

/** The columns that name the version, by what the statement calls the preparation; `i` is what a load `l` has in it. */
const KEYS = {
  p: { group: Prisma.sql`p.group_id`, recipe: Prisma.sql`p.recipe_id`, version: Prisma.sql`p.own_version` },
  i: { group: Prisma.sql`l.group_id`, recipe: Prisma.sql`i.recipe_id`, version: Prisma.sql`i.own_version` },
  r: { group: Prisma.sql`r.group_id`, recipe: Prisma.sql`r.recipe_id`, version: Prisma.sql`r.own_version` },
} as const

/** A recipe that may be put on a day: of the library, or the newest version of one of the group's own that is in use. */
export async function recipeForDay(
  tx: Tx,
  groupId: string,
  recipeId: string,
): Promise<{ recipe: Recipe; ownVersion: number | null } | null> {
  const published = recipeById(recipeId)
  if (published) return { recipe: published, ownVersion: null }
  const own = await newestVersion(tx, groupId, recipeId)
  return own && !own.retiredAt ? { recipe: recipeOfOwn(readOwnRecipe(recipeId, own.version)), ownVersion: own.version.number } : null
}

/** The newest version of a group's own recipe with the conditions that stand; null when the group has no such recipe. Three statements. */
export async function newestVersion(tx: Tx, groupId: string, recipeId: string) {
  const recipe = await tx.ownRecipe.findUnique({
    where: { groupId_id: { groupId, id: recipeId } },
    select: { retiredAt: true, versions: { orderBy: { number: 'desc' }, take: 1, ...OWN_RECIPE } },
  })
  const [version] = recipe?.versions ?? []
  return recipe && version ? { retiredAt: recipe.retiredAt, version } : null
}
