import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { ClaimJars } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { sayMoreThanOffered } from '@/shared/wording/claim-refusal'
import { notFound } from '@/shared/wording/refusal'
import { addToClaim, claimOf, lockClaimed, moveList, moveSum } from './claim-rows'
import { claimTheShortWay } from './claim-short-way'
import { overCap, readForClaim, whyNotAsk } from './read-for-claim'

/**
 * Asks for jars in the name of a household, changes how many, or gives them up with 0. What is given up goes to those who wait for it.
 *
 * The preparation's row is locked first; then one guarded statement moves its sum, so that claims never exceed the offer however many ask at once.
 * The plain case goes the short way, with the same result.
 */
export const claimJars = defineCommand({
  name: 'claim-jars',
  summary: 'Ask for jars',
  act: 'claim-jars',
  schema: ClaimJars,
  householdOf: (input) => input.householdId,
  shortWay: claimTheShortWay,
  async run({ tx, actor: { groupId }, now }, { preparationId, householdId, jars }) {
    const asking = await readForClaim(tx, groupId, preparationId, householdId)
    if (!asking.ok) return asking
    const stopped = whyNotAsk(asking.value, now, jars)
    if (stopped) return refuse(stopped)
    const preparation = await lockClaimed(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const { jars: before } = await claimOf(tx, groupId, preparationId, householdId)
    const waits = await waitsFor(tx, groupId, preparationId, householdId)
    const tooMany = overCap(asking.value, before + waits, jars + waits)
    if (tooMany) return refuse(tooMany)

    const moved = await moveSum(tx, groupId, preparationId, jars - before)
    if (!moved) {
      const { offered, claimed } = preparation
      const [most, others] = [offered - claimed + before, claimed - before]
      return refuse(sayMoreThanOffered(jars, asking.value.jarSize, { most, others, offered }))
    }
    const claim = await addToClaim(tx, groupId, preparationId, householdId, jars - before)
    const list = jars < before ? await moveList(tx, groupId, preparationId, asking.value.allergens) : { given: 0, history: [] }
    const claimed = moved.claimed + list.given
    const reply = { claimId: claim.id, preparationId, householdId, jars, offered: moved.offered, claimed }
    const detail = { preparationId, householdId, jars, before }
    return ok({ reply, history: [{ subject: `claim ${claim.id}`, detail, dayId: preparation.dayId }, ...list.history] })
  },
})

async function waitsFor(tx: Tx, groupId: string, preparationId: string, householdId: string): Promise<number> {
  const wish = await tx.waiting.findUnique({
    where: { groupId_preparationId_householdId: { groupId, preparationId, householdId } },
    select: { jars: true },
  })
  return wish?.jars ?? 0
}
