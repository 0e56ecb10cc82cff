import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { RetireOwnRecipe } from '@/shared/forms/own-recipe'
import { ok } from '@/shared/result/result'
import { lockOwnRecipe } from './one-own-recipe'

/** Takes a recipe out of use for new days, or back into it. Days that have it keep it, and so do their jars. */
export const retireOwnRecipe = defineCommand({
  name: 'retire-own-recipe',
  summary: 'Take a recipe out of use',
  act: 'edit-recipes',
  schema: RetireOwnRecipe,
  async run(context, { recipeId, retired }) {
    const { tx, actor, now } = context
    const locked = await lockOwnRecipe(context, recipeId)
    if (!locked.ok) return locked
    const where = { groupId_id: { groupId: actor.groupId, id: recipeId } }
    await tx.ownRecipe.update({ where, data: { retiredAt: retired === 'yes' ? now : null } })
    return ok({ reply: { recipeId, retired }, history: [{ subject: `own recipe ${recipeId}`, detail: { retired } }] })
  },
})
