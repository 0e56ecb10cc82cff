import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { TO_HAND_OVER } from '@/lib/queries/share-input'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { ReleaseJars } from '@/shared/forms/share'
import { ok, refuse } from '@/shared/result/result'
import { dateIn, isoDate } from '@/shared/time/calendar-date'
import { notFound, notNow } from '@/shared/wording/refusal'

/** Jars that nobody fetched by the last date are nobody's again, to be offered to others. Who could still come for them is waited for. */
export const releaseJars = defineCommand({
  name: 'release-jars',
  summary: 'Wait no longer for a household',
  act: 'award-jars',
  schema: ReleaseJars,
  async run(context, { dayId, householdId }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['resting', 'closed'])
    if (!day.ok) return day
    const { pickUpUntil } = await tx.day.findUniqueOrThrow({ where: { groupId_id: { groupId, id: dayId } }, select: { pickUpUntil: true } })
    const until = pickUpUntil && isoDate(pickUpUntil)
    if (until === null) return refuse(NO_DATE)
    if (!day.value.isDemo && dateIn(day.value.timeZone, now) <= until) return refuse(stillTime(until))
    const jars = await tx.jar.findMany({
      where: { groupId, dayId, householdId, OR: TO_HAND_OVER },
      select: { id: true, shortName: true, batch: { select: { preparationId: true } } },
    })
    if (jars.length === 0) return refuse(notFound('Jars of this household'))

    await tx.jar.updateMany({ where: { groupId, id: { in: jars.map(({ id }) => id) } }, data: { householdId: null } })
    for (const preparationId of [...new Set(jars.map(({ batch }) => batch.preparationId))].sort()) {
      const count = jars.filter(({ batch }) => batch.preparationId === preparationId).length
      const where = { groupId_preparationId_householdId: { groupId, preparationId, householdId } }
      const { jars: had, extra, reason } = await tx.award.findUniqueOrThrow({ where, select: { jars: true, extra: true, reason: true } })
      const left = had - count
      const data = { jars: left, extra: Math.min(extra, left), reason: `${reason} ${count} not fetched by ${until}, given back.` }
      await tx.award.update({ where, data })
    }
    const detail = { jars: jars.map(({ shortName }) => shortName), until }
    return ok({ reply: { householdId, jars: jars.length }, history: [{ subject: `household ${householdId}`, detail, dayId }] })
  },
})

const NO_DATE = notNow(
  'no-last-date',
  'Not given back: no last date was set.',
  'Nobody was told until when to come.',
  'Set place, contact and last date for fetching, and tell the household.',
)

const stillTime = (until: string) =>
  notNow(
    'still-time',
    'Not given back: there is still time.',
    `The household may fetch its jars until ${until}.`,
    'Ring them up, or set another date.',
  )
