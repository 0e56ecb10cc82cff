import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { readReplanInput } from '@/lib/queries/replan-input'
import { type ClockedDay, dayClock } from '@/lib/queries/day-clock'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { savePlan } from '@/lib/services/day/save-plan'
import { ReplanDay } from '@/shared/forms/replan'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { notFound } from '@/shared/wording/refusal'
import { planMovedOn } from '@/shared/wording/say-replan'
import { isPlannedAgain, plannedAgain, plannedAgainLocked } from './planned-again'

/** A preview may be this many minutes old and still be used as it was shown. */
const PREVIEW_MINUTES = 5

/** A large day takes seconds to plan, and the floor goes on meanwhile: planned anew so often until nothing has been entered in between. */
const MOST_TRIES = 3

/**
 * Plans the rest of a running day anew and makes that its plan, under the next number. What has begun stays; batches and loads keep their codes.
 *
 * Refused when the plan that was looked at is no longer the day's: of two who plan at once, one wins and the other sees what they did.
 */
export const replanDay = defineCommand({
  name: 'replan-day',
  summary: 'Plan again from now',
  act: 'plan-day',
  schema: ReplanDay,
  async ahead({ actor: { groupId }, now }, { dayId, basedOn, from }) {
    const db = database()
    for (let tries = 0, known = false; tries < MOST_TRIES && !known; tries++) {
      const day = await clockedDay(db, groupId, dayId)
      if (day?.state !== 'running') return
      const input = await readReplanInput(db, groupId, dayId, minuteToPlanFrom(from, await dayClock(db, groupId, day, now)))
      if (input?.number !== basedOn) return
      known = isPlannedAgain(input)
      await plannedAgain(input)
    }
  },
  async run(context, { dayId, basedOn, from, reason }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const input = await readReplanInput(tx, groupId, dayId, minuteToPlanFrom(from, await dayClock(tx, groupId, day.value, now)))
    if (!input) return refuse(notFound('Plan'))
    if (input.number !== basedOn) return refuse(planMovedOn(input.number))
    const planned = await plannedAgainLocked(input)
    if (!planned.ok) return planned

    const { plan, problem, changes, dropped, brokenWaits } = planned.value
    const number = await savePlan(tx, groupId, dayId, problem, plan, { madeBy: 'replan', reason, madeAt: input.soFar.now })
    const figures = { number, finishAt: plan.finishAt, finishBefore: changes.finishBefore, people: changes.people.length }
    const detail = {
      ...figures,
      ...{ basedOn, reason, from: formatClock(input.soFar.now) },
      dropped: dropped.map(({ code, why }) => `${code}: ${why}`),
      cannotWait: brokenWaits.map(({ code }) => code),
    }
    return ok({ reply: { dayId, ...figures, dropped: dropped.length }, history: [{ subject: `day ${dayId}`, detail, dayId }] })
  },
})

/** The minute of the preview while it is fresh, else the minute that it is. */
function minuteToPlanFrom(from: number | undefined, clock: number): number {
  const now = Math.floor(clock)
  return from !== undefined && from <= now && now - from <= PREVIEW_MINUTES ? from : now
}

/** The day with what its clock needs, without a lock. */
async function clockedDay(db: Tx, groupId: string, dayId: string): Promise<(ClockedDay & { readonly state: string }) | null> {
  const select = { id: true, state: true, date: true, accessAt: true, hardEnd: true, group: { select: { timeZone: true, isDemo: true } } }
  const day = await db.day.findFirst({ where: { groupId, id: dayId }, select })
  return day && { ...day, ...day.group, date: day.date.toISOString().slice(0, 10) }
}
