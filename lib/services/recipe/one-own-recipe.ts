import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { Prisma } from '@/lib/db/generated/client'
import { newestVersion } from '@/lib/stores/recipes'
import { readOwnRecipe } from '@/shared/forms/saved-own-recipe'
import type { BindingConditionId } from '@/shared/recipes/own-recipe'
import type { OwnRecipe, OwnRecipeContent } from '@/shared/recipes/own-recipe-content'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'

/** The published process that a version borrows, with the printed row that was read. */
export interface Binding {
  readonly foodId: string
  readonly pack: string
  readonly method: string
  readonly gauge: string | null
  readonly rowKey: string
  readonly edition: string
}

/** A recipe of the group under a lock: changes of one recipe take their turns. */
export interface LockedRecipe {
  readonly own: OwnRecipe
  readonly binding: Binding | null
}

/** Locks a recipe and reads its newest version; refused when it has moved on from the version that was on the screen. */
export async function lockOwnRecipe(
  { tx, actor: { groupId } }: CommandContext,
  recipeId: string,
  seen?: number,
): Promise<Result<LockedRecipe, Refusal>> {
  const [row] = await tx.$queryRaw<{ version: number }[]>`
    SELECT version FROM own_recipe WHERE group_id = ${groupId} AND id = ${recipeId} FOR UPDATE`
  const newest = row && (await newestVersion(tx, groupId, recipeId))
  if (!row || !newest) return refuse(notFound('Recipe'))
  if (seen !== undefined && seen !== row.version) return refuse(CHANGED_MEANWHILE)
  const where = { groupId_recipeId_number: { groupId, recipeId, number: row.version } }
  const { foodId, pack, method, gauge, rowKey, edition } = await tx.ownRecipeVersion.findUniqueOrThrow({
    where,
    select: { foodId: true, pack: true, method: true, gauge: true, rowKey: true, edition: true },
  })
  const binding = foodId && pack && method && rowKey && edition ? { foodId, pack, method, gauge, rowKey, edition } : null
  return ok({ own: readOwnRecipe(recipeId, newest.version), binding })
}

/** Writes the next version. Of the conditions that stood confirmed, those that `kept` names go with it, as whoever confirmed them did. */
export async function writeVersion(
  { tx, actor: { groupId, personId }, now }: CommandContext,
  { own }: LockedRecipe,
  next: { readonly content: OwnRecipeContent; readonly binding: Binding | null; readonly kept: readonly BindingConditionId[] },
): Promise<number> {
  const number = own.version + 1
  const content = next.content as unknown as Prisma.InputJsonValue
  const written = { groupId, recipeId: own.id, number, content, writtenBy: personId, writtenAt: now }
  await tx.ownRecipeVersion.create({ data: { ...written, ...(next.binding ?? {}) } })
  await tx.ownRecipe.update({ where: { groupId_id: { groupId, id: own.id } }, data: { version: number } })
  if (next.kept.length > 0)
    await tx.$executeRaw`
      INSERT INTO own_recipe_condition (group_id, recipe_id, version, condition, statement, edition, source, confirmed_by, confirmed_at)
      SELECT group_id, recipe_id, ${number}, condition, statement, edition, source, confirmed_by, confirmed_at FROM own_recipe_condition
      WHERE group_id = ${groupId} AND recipe_id = ${own.id} AND version = ${own.version} AND withdrawn_at IS NULL
        AND condition IN (${Prisma.join(next.kept)})`
  return number
}

const CHANGED_MEANWHILE: Refusal = notNow(
  'changed-meanwhile',
  'Not saved: somebody else changed this recipe meanwhile.',
  'What you did was done to an older version.',
  'Load the page again, look at what changed, and do it once more.',
)
