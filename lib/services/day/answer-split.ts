import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { AnswerSplit } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { addToClaim, claimOf } from './claim-rows'
import { cannotMove } from './move-day'
import { lockSplit, settleSplit } from './one-split'
import { overCap, readForClaim, refuseAllergens } from './read-for-claim'

/** Takes the part of a claim that another household offers, or declines it. Taken, the jars move from one claim to the other at once; no sum changes. */
export const answerSplit = defineCommand({
  name: 'answer-split',
  summary: 'Answer an offer of jars',
  act: 'claim-jars',
  schema: AnswerSplit,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId }, now }, { splitId, householdId, answer }) {
    const found = await tx.claimSplit.findUnique({ where: { groupId_id: { groupId, id: splitId } }, select: { preparationId: true } })
    if (!found) return refuse(notFound('Offer of jars'))
    const asking = await readForClaim(tx, groupId, found.preparationId, householdId)
    if (!asking.ok) return asking
    const { state } = asking.value.times
    const locked = await lockSplit(tx, groupId, splitId, 'toHouseholdId', householdId)
    if (!locked.ok) return locked
    const { preparationId, dayId, fromHouseholdId, jars } = locked.value
    const subject = `split ${splitId}`
    if (answer === 'decline') {
      await settleSplit(tx, groupId, splitId, 'declined', now)
      return ok({ reply: { splitId, state: 'declined' }, history: [{ subject, detail: { state: 'declined' }, dayId }] })
    }
    if (!isBeforeWork(state)) return refuse(cannotMove(state, 'Take the jars'))
    const [giver, taker] = [
      await claimOf(tx, groupId, preparationId, fromHouseholdId),
      await claimOf(tx, groupId, preparationId, householdId),
    ]
    const waits = await tx.waiting.findUnique({
      where: { groupId_preparationId_householdId: { groupId, preparationId, householdId } },
      select: { jars: true },
    })
    const held = taker.jars + (waits?.jars ?? 0)
    const stopped = refuseAllergens(asking.value) ?? overCap(asking.value, held, held + jars)
    if (stopped) return refuse(stopped)
    if (giver.jars < jars) return refuse(GIVEN_UP)

    await addToClaim(tx, groupId, preparationId, fromHouseholdId, -jars)
    await addToClaim(tx, groupId, preparationId, householdId, jars)
    await settleSplit(tx, groupId, splitId, 'accepted', now)
    const detail = { state: 'accepted', preparationId, fromHouseholdId, toHouseholdId: householdId, jars }
    return ok({ reply: { splitId, state: 'accepted', jars }, history: [{ subject, detail, dayId }] })
  },
})

const GIVEN_UP = notNow(
  'split-too-large',
  'Not saved: the other household has not so many any more.',
  'It gave up jars after it offered them.',
  'Ask it to offer anew what it has.',
)
