import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { ChangeOwnRecipe } from '@/shared/forms/own-recipe'
import { BINDING_CONDITION_IDS } from '@/shared/recipes/own-recipe'
import { droppedConditions } from '@/shared/recipes/own-recipe-content'
import { ok } from '@/shared/result/result'
import { lockOwnRecipe, writeVersion } from './one-own-recipe'

/**
 * Writes the next version of a recipe. Days keep the version they were made with.
 *
 * What was confirmed and rests on what changed is no longer confirmed; another pack has another table, so it leaves the borrowed process behind.
 */
export const changeOwnRecipe = defineCommand({
  name: 'change-own-recipe',
  summary: 'Change a recipe of our own',
  act: 'edit-recipes',
  schema: ChangeOwnRecipe,
  async run(context, { recipeId, version, content }) {
    const locked = await lockOwnRecipe(context, recipeId, version)
    if (!locked.ok) return locked
    const { own, binding } = locked.value
    const samePack = binding?.pack === content.pack ? binding : null
    const dropped = droppedConditions(own.content, content)
    const kept = samePack ? BINDING_CONDITION_IDS.filter((id) => !dropped.has(id)) : []
    const lost = own.confirmed.filter(({ id }) => !kept.includes(id)).map(({ statement }) => statement)
    const number = await writeVersion(context, locked.value, { content, binding: samePack, kept })
    const detail = { version: number, ...content, noLongerConfirmed: lost }
    return ok({ reply: { recipeId, version: number, dropped: lost }, history: [{ subject: `own recipe ${recipeId}`, detail }] })
  },
})
