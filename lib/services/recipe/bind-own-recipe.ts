import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { BindOwnRecipe, type CannerChoice } from '@/shared/forms/own-recipe'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import { processOfBinding } from '@/shared/recipes/conditions-to-confirm'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'
import { lockOwnRecipe, writeVersion } from './one-own-recipe'

/** Names the published process that a recipe borrows. Nothing of it is confirmed yet, whatever was confirmed of another one. */
export const bindOwnRecipe = defineCommand({
  name: 'bind-own-recipe',
  summary: 'Choose a published process',
  act: 'edit-recipes',
  schema: BindOwnRecipe,
  async run(context, { recipeId, version, foodId, canner, kitchenId }) {
    const { tx, actor } = context
    const locked = await lockOwnRecipe(context, recipeId, version)
    if (!locked.ok) return locked
    const where = { groupId_id: { groupId: actor.groupId, id: kitchenId } }
    const kitchen = await tx.kitchen.findUnique({ where, select: { elevationFeet: true } })
    if (!kitchen) return refuse(notFound('Kitchen'))
    const { content } = locked.value.own
    const asked = { foodId, pack: content.pack, ...CANNERS[canner] }
    const [usual] = content.yields
    if (!usual) throw new RangeError(`own recipe ${recipeId} names no jar`)
    const found = processOfBinding(asked, usual.jar, kitchen.elevationFeet)
    if (!found.ok) return refuse(sayProcessChoice(content.title, { kind: 'refused', refusal: found.problem }))

    const { rowKey, edition } = found.value
    const binding = { ...asked, foodId: found.value.foodId, rowKey, edition }
    const number = await writeVersion(context, locked.value, { content, binding, kept: [] })
    const detail = { version: number, ...binding }
    return ok({ reply: { recipeId, version: number, rowKey, edition }, history: [{ subject: `own recipe ${recipeId}`, detail }] })
  },
})

const CANNERS: Readonly<Record<CannerChoice, { readonly method: Method; readonly gauge: Gauge | null }>> = {
  'boiling-water': { method: 'boiling-water', gauge: null },
  'atmospheric-steam': { method: 'atmospheric-steam', gauge: null },
  'pressure-dial': { method: 'pressure', gauge: 'dial' },
  'pressure-weighted': { method: 'pressure', gauge: 'weighted' },
}
