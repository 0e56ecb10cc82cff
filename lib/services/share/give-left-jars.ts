import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { shareInput, TO_HAND_OVER } from '@/lib/queries/share-input'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { GiveLeftJars } from '@/shared/forms/share'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow } from '@/shared/wording/refusal'

/**
 * Gives jars that nobody claimed to a household: to one whose claim was cut, to one that waits, to one that came late. Out of the jars that are sealed, or
 * kept cold without a process, and nobody's at that moment, and nothing that contains what is on its list.
 */
export const giveLeftJars = defineCommand({
  name: 'give-left-jars',
  summary: 'Give jars that are left',
  act: 'award-jars',
  schema: GiveLeftJars,
  async run(context, { dayId, preparationId, householdId, jars }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['resting', 'closed'])
    if (!day.ok) return day
    const product = (await shareInput(tx, groupId, dayId)).find((each) => each.preparationId === preparationId)
    const claim = product?.claims.find((each) => each.householdId === householdId)
    if (!product || !claim) return refuse(notFound(product ? 'Household' : 'Product'))
    const isShared = (await tx.award.count({ where: { groupId, preparation: { dayId } } })) > 0
    if (!isShared) return refuse(SHARE_FIRST)
    if (claim.allergens?.length)
      return refuse(badInput({ householdId: [`It contains ${claim.allergens.join(', ')}, which is on their list.`] }))
    const free = await tx.jar.findMany({
      where: { groupId, dayId, OR: TO_HAND_OVER, householdId: null, batch: { preparationId } },
      select: { id: true, shortName: true },
      orderBy: { shortName: 'asc' },
    })
    if (free.length < jars) return refuse(badInput({ jars: [free.length === 0 ? 'None is left.' : `Only ${free.length} are left.`] }))

    const given = free.slice(0, jars)
    await tx.jar.updateMany({ where: { groupId, id: { in: given.map(({ id }) => id) } }, data: { householdId } })
    const where = { groupId_preparationId_householdId: { groupId, preparationId, householdId } }
    const before = await tx.award.findUnique({ where, select: { reason: true } })
    const reason = [before?.reason, `${jars} more of those that nobody claimed.`].filter(Boolean).join(' ')
    await tx.award.upsert({
      where,
      create: { groupId, id: randomUUID(), preparationId, householdId, asked: claim.jars, jars, extra: jars, quota: '', reason },
      update: { jars: { increment: jars }, extra: { increment: jars }, reason },
    })
    const detail = { preparationId, householdId, jars: given.map(({ shortName }) => shortName) }
    return ok({ reply: { householdId, jars }, history: [{ subject: `left jars of ${preparationId}`, detail, dayId }] })
  },
})

const SHARE_FIRST = notNow(
  'not-shared-yet',
  'No jar is left yet: the shares are not given out.',
  'Who claimed comes first.',
  'Share the jars out, then give what is left.',
)
