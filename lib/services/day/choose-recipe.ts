import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { recipeForDay } from '@/lib/stores/recipes'
import { type ChosenProcess, chooseProcess, type ProcessChoiceProblem, sourceLine } from '@/shared/day/choose-process'
import { freeProductLetter } from '@/shared/day/free-product-letter'
import { ChooseRecipe, COLD } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Recipe } from '@/shared/recipes/recipe'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

/**
 * Puts a recipe on a day: the process is looked up at the kitchen's elevation and kept with its row, edition and source.
 *
 * A recipe without a process, and one of the group's own, may be put up for the fridge or freezer: then nothing of a canner is kept. Of its
 * own recipes the day gets the newest version and keeps it.
 */
export const chooseRecipe = defineCommand({
  name: 'choose-recipe',
  summary: 'Choose a recipe',
  act: 'edit-day',
  schema: ChooseRecipe,
  async run({ tx, actor: { groupId } }, { dayId, recipeId, gauge = null, method, ...wish }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (day.state !== 'draft' && day.state !== 'claiming') return refuse(cannotMove(day.state, 'Choose a recipe'))
    const found = await recipeForDay(tx, groupId, recipeId)
    if (!found) return refuse(notFound('Recipe'))
    const { recipe, ownVersion } = found
    const where = { groupId_id: { groupId, id: day.kitchenId } }
    const { elevationFeet } = await tx.kitchen.findUniqueOrThrow({ where, select: { elevationFeet: true } })
    const put = method === COLD ? putCold(recipe, wish.jarSize) : chooseProcess({ recipe, method, gauge, elevationFeet, ...wish })
    if (!put.ok) return refuse(sayProcessChoice(recipe.title, put.problem))

    const others = await tx.preparation.findMany({ where: { groupId, dayId }, select: { recipeId: true, jarSize: true, letter: true } })
    if (others.some((other) => other.recipeId === recipe.id && other.jarSize === wish.jarSize)) return refuse(ON_THE_DAY(recipe.title))
    const letter = freeProductLetter(recipe, new Set(others.map((other) => other.letter)))
    if (letter === null) return refuse(NO_LETTER)
    const id = randomUUID()
    const canned = put.value && { method: put.value.published.method, gauge, ...processColumns(put.value) }
    const columns = { ...wish, recipeId: recipe.id, ownVersion, letter, ...canned }
    await tx.preparation.create({ data: { groupId, id, dayId, ...columns } })
    const { minutes = null, published = null } = put.value ?? {}
    const process = { processMinutes: minutes, publishedMinutes: published?.minutes ?? null, processPsi: published?.psi ?? null }
    const reply = { preparationId: id, letter, isCold: put.value === null, ...process }
    return ok({ reply, history: [{ subject: `preparation ${id}`, detail: columns, dayId }] })
  },
})

/** Without a process: only where none is held, or where the recipe is the group's own. A tested recipe is canned as it was tested. */
function putCold(recipe: Recipe, jarSize: JarSize): Result<null, ProcessChoiceProblem> {
  if (recipe.process && !recipe.own) return refuse({ kind: 'has-a-process' })
  return recipe.jars.includes(jarSize) ? ok(null) : refuse({ kind: 'jar-not-in-recipe', jars: recipe.jars })
}

/** A chosen process as it is kept with the preparation. */
export const processColumns = ({ published, minutes }: ChosenProcess) => ({
  processRowKey: published.rowKey,
  processEdition: published.source.edition,
  processMinutes: minutes,
  processPsi: published.psi,
  processSource: sourceLine(published),
})

const ON_THE_DAY = (title: string) =>
  notNow(
    'on-the-day',
    `${title}: on this day already.`,
    'The same recipe in the same jar is there.',
    'Change its offer, or choose another jar size.',
  )

const NO_LETTER = notNow('no-letter', 'No room for another recipe.', 'Every letter for jars is taken.', 'Make fewer things on one day.')
