import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import type { Prisma } from '@/lib/db/generated/client'
import { AddOwnRecipe } from '@/shared/forms/own-recipe'
import { ok } from '@/shared/result/result'

/** Writes a recipe of the group's own down. It borrows no process yet, so its jars are for the fridge or the freezer. */
export const addOwnRecipe = defineCommand({
  name: 'add-own-recipe',
  summary: 'Add a recipe of our own',
  act: 'edit-recipes',
  schema: AddOwnRecipe,
  async run({ tx, actor: { groupId, personId }, now }, content) {
    const id = randomUUID()
    await tx.ownRecipe.create({ data: { groupId, id } })
    const written = { groupId, recipeId: id, number: 1, content: content as unknown as Prisma.InputJsonValue }
    await tx.ownRecipeVersion.create({ data: { ...written, writtenBy: personId, writtenAt: now } })
    return ok({ reply: { recipeId: id, version: 1 }, history: [{ subject: `own recipe ${id}`, detail: { version: 1, ...content } }] })
  },
})
