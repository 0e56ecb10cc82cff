import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { whoAvoids } from '@/shared/day/who-avoids'
import { OfferSplit } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { claimOf, lockClaimed } from './claim-rows'
import { cannotMove } from './move-day'
import { readForClaim } from './read-for-claim'

/**
 * Offers a part of a household's claim to another household. Nothing moves until the other takes it; until work begins, also after the claims have
 * closed, since the day's sums stay what they are.
 */
export const offerSplit = defineCommand({
  name: 'offer-split',
  summary: 'Offer a part of the claim to another household',
  act: 'claim-jars',
  schema: OfferSplit,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId }, now }, { preparationId, householdId, toHouseholdId, jars }) {
    if (toHouseholdId === householdId) return refuse(badInput({ toHouseholdId: ['Choose another household.'] }))
    const asking = await readForClaim(tx, groupId, preparationId, householdId)
    if (!asking.ok) return asking
    const { times, title } = asking.value
    if (times.state === 'draft' || !isBeforeWork(times.state)) return refuse(cannotMove(times.state, 'Offer a part of the claim'))
    const preparation = await lockClaimed(tx, groupId, preparationId)
    if (!preparation) return refuse(notFound('Product'))
    const receiver = await tx.household.findFirst({
      where: { groupId, id: toHouseholdId, leftAt: null },
      select: { allergens: true, people: { where: { active: true }, select: { name: true, allergies: true } } },
    })
    if (!receiver) return refuse(notFound('Household'))
    if (whoAvoids(asking.value.allergens, receiver).length > 0) return refuse(NOT_FOR_THEM)
    const held = await claimOf(tx, groupId, preparationId, householdId)
    const open = await tx.claimSplit.findMany({
      where: { groupId, preparationId, fromHouseholdId: householdId, state: 'offered' },
      select: { toHouseholdId: true, jars: true },
    })
    if (open.some((split) => split.toHouseholdId === toHouseholdId)) return refuse(OFFERED_ALREADY)
    const left = held.jars - open.reduce((sum, split) => sum + split.jars, 0)
    if (jars > left)
      return refuse(badInput({ jars: [left > 0 ? `At most ${left} of your ${held.jars}.` : `You have no ${title} to give.`] }))

    const id = randomUUID()
    const offer = { preparationId, fromHouseholdId: householdId, toHouseholdId, jars }
    await tx.claimSplit.create({ data: { groupId, id, ...offer, offeredAt: now } })
    return ok({ reply: { splitId: id, jars }, history: [{ subject: `split ${id}`, detail: offer, dayId: preparation.dayId }] })
  },
})

/** What is on another household's list is for that household and the organiser. */
const NOT_FOR_THEM = notNow(
  'split-allergen',
  'Not saved: these jars are not for that household.',
  'Something in them is on its list.',
  'Offer them to another household, or give them up.',
)

const OFFERED_ALREADY = notNow(
  'split-open',
  'Not saved: an offer to this household is open.',
  'It has not answered yet.',
  'Wait for the answer, or take the offer back and make a new one.',
)
