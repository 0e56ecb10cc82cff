import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { OWN_RECIPE, recipeOf } from '@/lib/stores/recipes'
import { ChangeOffer } from '@/shared/forms/preparation'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { moveList } from './claim-rows'
import { lockPreparation } from './lock-day'
import { cannotMove } from './move-day'

/** Changes how many jars of a product are offered, never to fewer than are claimed. More go first to those who wait for them. */
export const changeOffer = defineCommand({
  name: 'change-offer',
  summary: 'Change the offer',
  act: 'edit-day',
  schema: ChangeOffer,
  async run({ tx, actor: { groupId } }, { preparationId, offered, spareJars }) {
    const preparation = await lockPreparation(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const { dayId, state, claimed } = preparation
    if (!isBeforeWork(state)) return refuse(cannotMove(state, 'Change the offer'))
    if (offered < claimed) return refuse(badInput({ offered: [`${claimed} are asked for already. Offer at least that many.`] }))
    const { recipeId, ownRecipe } = await tx.preparation.update({
      where: { groupId_id: { groupId, id: preparationId } },
      data: { offered, spareJars },
      select: { recipeId: true, ownRecipe: OWN_RECIPE },
    })
    const list = await moveList(tx, groupId, preparationId, recipeOf({ recipeId, ownRecipe }).allergens)
    const detail = { offered, spareJars, before: preparation.offered }
    const line = { subject: `preparation ${preparationId}`, detail, dayId }
    return ok({ reply: { preparationId, offered, spareJars, movedUp: list.given }, history: [line, ...list.history] })
  },
})
