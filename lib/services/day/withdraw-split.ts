import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { WithdrawSplit } from '@/shared/forms/claim'
import { ok } from '@/shared/result/result'
import { lockSplit, settleSplit } from './one-split'

/** Takes back an offer of a part of a claim that was not answered yet. */
export const withdrawSplit = defineCommand({
  name: 'withdraw-split',
  summary: 'Take back an offer of jars',
  act: 'claim-jars',
  schema: WithdrawSplit,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId }, now }, { splitId, householdId }) {
    const locked = await lockSplit(tx, groupId, splitId, 'fromHouseholdId', householdId)
    if (!locked.ok) return locked
    await settleSplit(tx, groupId, splitId, 'withdrawn', now)
    const { dayId } = locked.value
    return ok({ reply: { splitId, state: 'withdrawn' }, history: [{ subject: `split ${splitId}`, detail: { state: 'withdrawn' }, dayId }] })
  },
})
