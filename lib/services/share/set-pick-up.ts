import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { SetPickUp } from '@/shared/forms/share'
import { ok, refuse } from '@/shared/result/result'
import { badInput } from '@/shared/wording/refusal'

/** Says where, until when and through whom jars are fetched that were not taken home at once. */
export const setPickUp = defineCommand({
  name: 'set-pick-up',
  summary: 'Say where jars are fetched',
  act: 'hand-over',
  schema: SetPickUp,
  async run(context, { dayId, place, until, contact }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['draft', 'claiming', 'planned', 'running', 'resting', 'closed'])
    if (!day.ok) return day
    if (until <= day.value.date) return refuse(badInput({ until: [`After the canning day, ${day.value.date}.`] }))
    const data = { pickUpPlace: place, pickUpUntil: new Date(`${until}T00:00:00Z`), pickUpContact: contact, version: { increment: 1 } }
    await tx.day.update({ where: { groupId_id: { groupId, id: dayId } }, data })
    return ok({ reply: { dayId, until }, history: [{ subject: `fetching of day ${dayId}`, detail: { place, until, contact }, dayId }] })
  },
})
