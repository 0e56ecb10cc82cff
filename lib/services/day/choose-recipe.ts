import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { type ChosenProcess, chooseProcess, sourceLine } from '@/shared/day/choose-process'
import { freeProductLetter } from '@/shared/day/free-product-letter'
import { ChooseRecipe } from '@/shared/forms/preparation'
import { recipeById } from '@/shared/recipes/recipe-library'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

/** Puts a recipe on a day: the process is looked up at the kitchen's elevation and kept with its row, edition and source. */
export const chooseRecipe = defineCommand({
  name: 'choose-recipe',
  summary: 'Choose a recipe',
  act: 'edit-day',
  schema: ChooseRecipe,
  async run({ tx, actor: { groupId } }, { dayId, recipeId, gauge = null, ...wish }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (day.state !== 'draft' && day.state !== 'claiming') return refuse(cannotMove(day.state, 'Choose a recipe'))
    const recipe = recipeById(recipeId)
    if (!recipe) return refuse(notFound('Recipe'))
    const where = { groupId_id: { groupId, id: day.kitchenId } }
    const { elevationFeet } = await tx.kitchen.findUniqueOrThrow({ where, select: { elevationFeet: true } })
    const chosen = chooseProcess({ recipe, gauge, elevationFeet, ...wish })
    if (!chosen.ok) return refuse(sayProcessChoice(recipe.title, chosen.problem))

    const others = await tx.preparation.findMany({ where: { groupId, dayId }, select: { recipeId: true, jarSize: true, letter: true } })
    if (others.some((other) => other.recipeId === recipe.id && other.jarSize === wish.jarSize)) return refuse(ON_THE_DAY(recipe.title))
    const letter = freeProductLetter(recipe, new Set(others.map((other) => other.letter)))
    if (letter === null) return refuse(NO_LETTER)
    const id = randomUUID()
    const columns = { ...wish, gauge, recipeId: recipe.id, letter, ...processColumns(chosen.value) }
    await tx.preparation.create({ data: { groupId, id, dayId, ...columns } })
    const { minutes, published } = chosen.value
    const reply = { preparationId: id, letter, processMinutes: minutes, publishedMinutes: published.minutes, processPsi: published.psi }
    return ok({ reply, history: [{ subject: `preparation ${id}`, detail: columns, dayId }] })
  },
})

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
