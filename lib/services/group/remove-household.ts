import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { leaveClaims } from '@/lib/services/day/leave-claims'
import { lockHousehold, lockOrganisers } from '@/lib/stores/lock-rows'
import { RemoveHousehold } from '@/shared/forms/household'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { LAST_ORGANISER } from './change-person-role'

/**
 * Lets a household leave the group. Its people have no part in the group from their next request on; it stays named with whatever it did and with
 * every jar it took home, so that a recall still reaches it.
 *
 * Refused while jars are claimed for it or awarded to it and not handed over: they would be nobody's. Its wishes on waiting lists and its open offers
 * to other households go.
 */
export const removeHousehold = defineCommand({
  name: 'remove-household',
  summary: 'Let a household leave',
  act: 'remove-household',
  schema: RemoveHousehold,
  async run({ tx, actor: { groupId, householdId: ownId }, now }, { householdId: id }) {
    const organisers = await lockOrganisers(tx, groupId)
    if (!(await lockHousehold(tx, groupId, id))) return refuse(notFound('Household'))
    const where = { groupId_id: { groupId, id } }
    const { leftAt, name } = await tx.household.findUniqueOrThrow({ where, select: { leftAt: true, name: true } })
    if (leftAt) return refuse(LEFT_ALREADY)
    if (id === ownId) return refuse(NOT_ONES_OWN)
    const theirs = await tx.person.count({ where: { groupId, householdId: id, id: { in: organisers } } })
    if (theirs === organisers.length && organisers.length > 0) return refuse(LAST_ORGANISER)
    const held = await heldJars(tx, groupId, id)
    if (held) return refuse(held)

    const left = await leaveClaims(tx, groupId, id, now)
    await tx.person.updateMany({ where: { groupId, householdId: id }, data: { active: false } })
    await tx.invite.updateMany({ where: { groupId, householdId: id, usedAt: null, revokedAt: null }, data: { revokedAt: now } })
    await tx.household.update({ where, data: { leftAt: now } })
    return ok({ reply: { householdId: id }, history: [{ subject: `household ${id}`, detail: { left: name } }, ...left] })
  },
})

/** What still keeps the household in the group: jars asked for on a day that is not over, or shared out and not fetched. */
async function heldJars(tx: Tx, groupId: string, householdId: string): Promise<Refusal | null> {
  const [awarded] = await tx.$queryRaw<{ jars: number; day: string }[]>`
    SELECT sum(a.jars)::int AS jars, d.name AS day FROM award a
    JOIN preparation p ON p.group_id = a.group_id AND p.id = a.preparation_id JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
    WHERE a.group_id = ${groupId} AND a.household_id = ${householdId} AND a.jars > 0 AND a.handed_over_at IS NULL
    GROUP BY d.id, d.name, d.date ORDER BY d.date LIMIT 1`
  if (awarded) return awardedJars(awarded.jars, awarded.day)
  const [claimed] = await tx.$queryRaw<{ jars: number; day: string; isOpen: boolean }[]>`
    SELECT sum(c.jars)::int AS jars, d.name AS day, d.state = 'claiming' AS "isOpen" FROM claim c
    JOIN preparation p ON p.group_id = c.group_id AND p.id = c.preparation_id JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
    WHERE c.group_id = ${groupId} AND c.household_id = ${householdId} AND c.jars > 0 AND d.state NOT IN ('closed', 'cancelled')
    GROUP BY d.id, d.name, d.date, d.state ORDER BY d.date LIMIT 1`
  return claimed ? claimedJars(claimed) : null
}

const awardedJars = (jars: number, day: string) =>
  notNow(
    'jars-awarded',
    'The household stays for now.',
    `${jars} ${jars === 1 ? 'jar' : 'jars'} of ${day} are its share and were not handed over.`,
    'Hand them over on the shares page, then let it leave.',
  )

const claimedJars = ({ jars, day, isOpen }: { jars: number; day: string; isOpen: boolean }) =>
  notNow(
    'jars-claimed',
    'The household stays for now.',
    `It asks for ${jars} ${jars === 1 ? 'jar' : 'jars'} of ${day}.`,
    isOpen
      ? 'Give the jars up on the claims page, or offer them to another household; then let it leave.'
      : 'Offer the jars to another household on the claims page, or wait until they are handed over; then let it leave.',
  )

const LEFT_ALREADY = notNow(
  'left-already',
  'The household has left already.',
  'Somebody was faster.',
  'Load the page again; nothing more is to be done.',
)

const NOT_ONES_OWN = notNow(
  'own-household',
  'Your own household stays.',
  'Nobody can take the ground from under their own feet.',
  'Ask another organiser to let it leave.',
)
