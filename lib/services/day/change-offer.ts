import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { ChangeOffer } from '@/shared/forms/preparation'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { lockPreparation } from './lock-day'
import { cannotMove } from './move-day'

/** Changes how many jars of a product are offered, never to fewer than are claimed. */
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
    await tx.preparation.update({ where: { groupId_id: { groupId, id: preparationId } }, data: { offered, spareJars } })
    const detail = { offered, spareJars, before: preparation.offered }
    return ok({ reply: { preparationId, offered, spareJars }, history: [{ subject: `preparation ${preparationId}`, detail, dayId }] })
  },
})
