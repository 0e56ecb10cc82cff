import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { OnePreparation } from '@/shared/forms/preparation'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { lockPreparation } from './lock-day'
import { cannotMove } from './move-day'

/** Takes a recipe off a day, as long as nobody has asked for its jars and no timetable names it. */
export const dropRecipe = defineCommand({
  name: 'drop-recipe',
  summary: 'Take the recipe off the day',
  act: 'edit-day',
  schema: OnePreparation,
  async run({ tx, actor: { groupId } }, { preparationId }) {
    const preparation = await lockPreparation(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const { dayId, state, claimed, recipeId } = preparation
    if (state !== 'draft' && state !== 'claiming') return refuse(cannotMove(state, 'Take the recipe off the day'))
    if (claimed > 0) return refuse(ASKED_FOR(claimed))
    await tx.claim.deleteMany({ where: { groupId, preparationId } })
    await tx.claimSplit.deleteMany({ where: { groupId, preparationId } })
    await tx.waiting.deleteMany({ where: { groupId, preparationId } })
    await tx.preparation.delete({ where: { groupId_id: { groupId, id: preparationId } } })
    return ok({ reply: { dayId }, history: [{ subject: `preparation ${preparationId}`, detail: { dropped: recipeId }, dayId }] })
  },
})

const ASKED_FOR = (claimed: number) =>
  notNow(
    'asked-for',
    'The recipe stays on the day.',
    `${claimed} jars are asked for.`,
    'Ask the households to give up their jars first, or set the offer to what is asked for.',
  )
