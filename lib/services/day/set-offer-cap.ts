import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { SetOfferCap } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { lockPreparation } from './lock-day'
import { cannotMove } from './move-day'

/** Says how many jars of one product a household may ask for; nobody loses what it has asked for before. */
export const setOfferCap = defineCommand({
  name: 'set-offer-cap',
  summary: 'Set the most jars of a household',
  act: 'edit-day',
  schema: SetOfferCap,
  async run({ tx, actor: { groupId } }, { preparationId, householdCap = null }) {
    const preparation = await lockPreparation(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const { dayId, state } = preparation
    if (state !== 'draft' && state !== 'claiming') return refuse(cannotMove(state, 'Set the most jars of a household'))
    await tx.preparation.update({ where: { groupId_id: { groupId, id: preparationId } }, data: { householdCap } })
    return ok({
      reply: { preparationId, householdCap },
      history: [{ subject: `preparation ${preparationId}`, detail: { householdCap }, dayId }],
    })
  },
})
