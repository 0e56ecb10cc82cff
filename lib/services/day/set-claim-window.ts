import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { instantOf, localMomentOf } from '@/lib/time/local-moment'
import { claimWindowProblems } from '@/shared/day/claim-window'
import { SetClaimWindow } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { isoDate } from '@/shared/time/calendar-date'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

/**
 * Says when households may ask: from when, with which head start for those who promised produce or hours, until when, and how many jars each.
 *
 * The moments are those of the clock on the kitchen's wall. A lower cap takes nothing away from anybody: it only stops whoever asks for more.
 */
export const setClaimWindow = defineCommand({
  name: 'set-claim-window',
  summary: 'Set the time for asking',
  act: 'edit-day',
  schema: SetClaimWindow,
  async run({ tx, actor: { groupId }, now }, { dayId, version, claimsOpenAt, claimsCloseAt, earlyHours, householdCap }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (day.state !== 'draft' && day.state !== 'claiming') return refuse(cannotMove(day.state, 'Set the time for asking'))
    if (day.version !== version) return refuse(changedMeanwhile('The time for asking'))
    const { date, accessAt, group } = await tx.day.findUniqueOrThrow({
      where: { groupId_id: { groupId, id: dayId } },
      select: { date: true, accessAt: true, group: { select: { timeZone: true, isDemo: true } } },
    })
    const kept = day.claimsCloseAt && localMomentOf(day.claimsCloseAt, group.timeZone)
    const facts = {
      begins: `${isoDate(date)}T${formatClock(accessAt)}`,
      now: localMomentOf(now, group.timeZone),
      isDemo: group.isDemo,
      kept,
    }
    const problems = claimWindowProblems({ claimsOpenAt, claimsCloseAt, earlyHours }, facts)
    if (Object.keys(problems).length > 0) return refuse(badInput(problems))

    const instant = (moment: string | undefined) => (moment ? instantOf(moment, group.timeZone) : null)
    const set = { earlyMinutes: earlyHours * 60, householdCap: householdCap ?? null }
    const closes = claimsCloseAt === kept ? day.claimsCloseAt : instant(claimsCloseAt)
    await tx.day.update({
      where: { groupId_id: { groupId, id: dayId } },
      data: { ...set, claimsOpenAt: instant(claimsOpenAt), claimsCloseAt: closes, version: version + 1 },
    })
    const detail = { ...set, claimsOpenAt: claimsOpenAt ?? null, claimsCloseAt: claimsCloseAt ?? null }
    return ok({ reply: { dayId, version: version + 1 }, history: [{ subject: `claims of day ${dayId}`, detail, dayId }] })
  },
})
