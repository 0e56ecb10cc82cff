import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { OneDay } from '@/shared/forms/day'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { lockDay } from './lock-day'
import { moveDay } from './move-day'

/** Lets households ask for jars: a draft with at least one recipe and one jar on offer begins to take claims. */
export const openClaims = defineCommand({
  name: 'open-claims',
  summary: 'Open the claims',
  act: 'edit-day',
  schema: OneDay,
  async run({ tx, actor: { groupId } }, { dayId }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if ((await tx.preparation.count({ where: { groupId, dayId, offered: { gt: 0 } } })) === 0) return refuse(NOTHING_OFFERED)
    const moved = await moveDay(tx, groupId, day, 'claiming', 'Open the claims')
    if (!moved.ok) return moved
    return ok({ reply: { dayId, state: moved.value }, history: [{ subject: `day ${dayId}`, detail: { state: moved.value }, dayId }] })
  },
})

const NOTHING_OFFERED: Refusal = notNow(
  'nothing-offered',
  'The claims cannot open yet.',
  'No jar is on offer.',
  'Choose a recipe and say how many jars are offered.',
)
