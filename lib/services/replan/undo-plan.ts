import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { readReplanInput } from '@/lib/queries/replan-input'
import { dayClock } from '@/lib/queries/day-clock'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { savePlan } from '@/lib/services/day/save-plan'
import { UndoPlan } from '@/shared/forms/replan'
import { SavedDayPlan, SavedDayProblem } from '@/shared/forms/saved-plan'
import { whatMakesUntrue } from '@/shared/planning/still-true'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { notFound } from '@/shared/wording/refusal'
import { planMovedOn, sayNothingToUndo, sayUntrue } from '@/shared/wording/say-replan'

/**
 * Makes the plan before the present one the day's plan again, under a new number: no plan that was ever saved is lost.
 *
 * Refused when work that has begun since, or something that is out, makes the earlier plan untrue.
 */
export const undoPlan = defineCommand({
  name: 'undo-plan',
  summary: 'Go back to the plan before',
  act: 'plan-day',
  schema: UndoPlan,
  async run(context, { dayId, basedOn }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['planned', 'running'])
    if (!day.ok) return day
    const clock = day.value.state === 'running' ? Math.floor(await dayClock(tx, groupId, day.value, now)) : day.value.accessAt - 1
    const input = await readReplanInput(tx, groupId, dayId, clock)
    if (!input) return refuse(notFound('Plan'))
    if (input.number !== basedOn) return refuse(planMovedOn(input.number))
    const current = await tx.plan.findFirstOrThrow({
      where: { groupId, dayId, number: basedOn },
      select: { number: true, takenFrom: true },
    })
    const before = await tx.plan.findFirst({
      where: { groupId, dayId, number: { lt: current.takenFrom ?? current.number } },
      orderBy: { number: 'desc' },
      select: { number: true, problem: true, plan: true },
    })
    if (!before) return refuse(sayNothingToUndo())
    const plan = SavedDayPlan.parse(before.plan)
    const untrue = whatMakesUntrue(plan, input.soFar)
    if (untrue.length > 0) return refuse(sayUntrue(before.number, untrue))

    const made = { madeBy: 'undo', reason: `Plan ${before.number} again`, madeAt: clock, takenFrom: before.number } as const
    const number = await savePlan(tx, groupId, dayId, SavedDayProblem.parse(before.problem), plan, made)
    const detail = { number, takenFrom: before.number, basedOn, at: formatClock(clock), finishAt: plan.finishAt }
    return ok({
      reply: { dayId, number, takenFrom: before.number, finishAt: plan.finishAt },
      history: [{ subject: `day ${dayId}`, detail, dayId }],
    })
  },
})
