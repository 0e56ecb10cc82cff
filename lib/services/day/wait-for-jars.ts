import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { WaitForJars } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { claimOf, lockClaimed, moveList } from './claim-rows'
import { overCap, readForClaim, whyNotAsk } from './read-for-claim'

/**
 * Puts a household on the waiting list of a product, changes how many more jars it waits for, or takes it off with 0.
 *
 * The place is that of the first asking and stays when fewer are wished for; whoever wishes for more than before asks anew, at the end.
 * What is free is given at once, to the list in its order.
 */
export const waitForJars = defineCommand({
  name: 'wait-for-jars',
  summary: 'Wait for jars',
  act: 'claim-jars',
  schema: WaitForJars,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId }, now }, { preparationId, householdId, jars, takesFewer }) {
    const asking = await readForClaim(tx, groupId, preparationId, householdId)
    if (!asking.ok) return asking
    const stopped = whyNotAsk(asking.value, now, jars)
    if (stopped) return refuse(stopped)
    const preparation = await lockClaimed(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const claim = await claimOf(tx, groupId, preparationId, householdId)
    const before = await wishOf(tx, groupId, preparationId, householdId)
    const tooMany = overCap(asking.value, claim.jars + (before?.jars ?? 0), claim.jars + jars)
    if (tooMany) return refuse(tooMany)

    const wish = { groupId, preparationId, householdId, jars, takesFewer: takesFewer === 'yes', askedAt: now }
    await writeWish(tx, wish, before)
    const list = await moveList(tx, groupId, preparationId, asking.value.allergens)
    const after = await wishOf(tx, groupId, preparationId, householdId)
    const got = (await claimOf(tx, groupId, preparationId, householdId)).jars - claim.jars
    const reply = { preparationId, householdId, waits: after?.jars ?? 0, place: after?.place ?? null, got }
    const detail = { preparationId, householdId, jars, before: before?.jars ?? 0, takesFewer: takesFewer === 'yes' }
    const subject = `waiting list of preparation ${preparationId}`
    return ok({ reply, history: [{ subject, detail, dayId: preparation.dayId }, ...list.history] })
  },
})

interface Wish {
  readonly id: string
  readonly jars: number
  readonly place: number
}

const wishOf = (tx: Tx, groupId: string, preparationId: string, householdId: string): Promise<Wish | null> =>
  tx.waiting.findUnique({
    where: { groupId_preparationId_householdId: { groupId, preparationId, householdId } },
    select: { id: true, jars: true, place: true },
  })

type NewWish = { groupId: string; preparationId: string; householdId: string; jars: number; takesFewer: boolean; askedAt: Date }

/** The preparation is locked: no two wishes get one place, and the sum of the list is that of its wishes. */
async function writeWish(tx: Tx, wish: NewWish, before: Wish | null): Promise<void> {
  const { groupId, preparationId, jars, takesFewer } = wish
  if (before && jars > 0 && jars <= before.jars)
    await tx.waiting.update({ where: { groupId_id: { groupId, id: before.id } }, data: { jars, takesFewer } })
  else {
    if (before) await tx.waiting.delete({ where: { groupId_id: { groupId, id: before.id } } })
    const last = await tx.waiting.aggregate({ where: { groupId, preparationId }, _max: { place: true } })
    if (jars > 0) await tx.waiting.create({ data: { ...wish, id: randomUUID(), place: (last._max.place ?? 0) + 1 } })
  }
  const by = jars - (before?.jars ?? 0)
  await tx.preparation.update({ where: { groupId_id: { groupId, id: preparationId } }, data: { waiting: { increment: by } } })
}
