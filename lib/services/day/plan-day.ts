import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { PlanningBrokeOff } from '@/lib/planner/planning-broke-off'
import { plannedWithLocks } from '@/lib/services/replan/planned-with-locks'
import { daySize, isSearchedApart, MOST_BATCHES, MOST_JOBS_AT_ONCE } from '@/shared/day/day-size'
import { PlanTheDay } from '@/shared/forms/day'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { refusalBeforePlanning } from '@/shared/planning/refuse-day'
import { kettleWorks } from '@/shared/planning/kettle-works'
import { ok, type Result, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { sayPlanRefusal } from '@/shared/wording/say-plan'
import { planningBrokeOff, tooManyBatches } from '@/shared/wording/say-search'
import { lockDay } from './lock-day'
import { cannotMove, moveDay } from './move-day'
import { problemToPlan } from './problem-to-plan'
import { savePlan } from './save-plan'
import { endLiveSearch, startSearch } from './start-search'

/**
 * Makes the day's timetable from its claims and keeps it whole: the plan, its batches and its loads, or nothing.
 *
 * A day that is planned already and has not begun may be planned again: batches and loads keep their codes where the new plan has them too,
 * and those it leaves out go. The older plan stays on record. A large day is searched apart, by a job, unless counting alone says that it does
 * not fit; its plan is saved when the search has come to its end, or when somebody takes what there is (take-search.ts).
 */
export const planDay = defineCommand({
  name: 'plan-day',
  summary: 'Plan the day',
  act: 'plan-day',
  schema: PlanTheDay,
  async ahead({ actor: { groupId } }, { dayId, change }) {
    const db = database()
    const state = (await db.day.findFirst({ where: { groupId, id: dayId }, select: { state: true } }))?.state
    if (state !== 'claiming' && state !== 'planned') return
    const read = await problemToPlan(db, groupId, dayId, change)
    if (read.ok && !isNothingAsked(read.value) && !isSearchedApart(read.value)) await plannedNow(db, groupId, dayId, read.value)
  },
  async run(context, { dayId, change }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (day.state !== 'claiming' && day.state !== 'planned') return refuse(cannotMove(day.state, 'Plan the day'))
    const read = await problemToPlan(tx, groupId, dayId, change)
    if (!read.ok) return read
    const problem = read.value
    if (isNothingAsked(problem)) return refuse(NOTHING_ASKED)
    const size = daySize(problem)
    if (size.batches > MOST_BATCHES) return refuse(tooManyBatches(size.batches))
    if (size.jobs > MOST_JOBS_AT_ONCE) {
      const early = refusalBeforePlanning(problem)
      return early
        ? refuse(sayPlanRefusal(problem, { ...early, waysOut: [] }))
        : ok(await startSearch(context, { dayId, problem, size, change }))
    }
    const planned = await plannedNow(tx, groupId, dayId, problem)
    if (!planned.ok) return planned

    if (day.state === 'claiming') {
      const moved = await moveDay(tx, groupId, day, 'planned', 'Plan the day')
      if (!moved.ok) return moved
    }
    await endLiveSearch(tx, groupId, dayId, context.now)
    const number = await savePlan(tx, groupId, dayId, problem, planned.value)
    const { finishAt, batches, loads, cannerMinutes } = planned.value
    const figures = { number, finishAt, batches: batches.length, loads: loads.length, cannerMinutes: cannerMinutes.needed }
    const detail = { ...figures, change: change ?? null }
    return ok({ reply: { dayId, ...figures }, history: [{ subject: `day ${dayId}`, detail, dayId }] })
  },
})

const isNothingAsked = (problem: DayProblem): boolean =>
  kettleWorks(problem).every((each) => each.jarsWanted + (each.spare.kind === 'jars' ? each.spare.jars : 0) === 0)

async function plannedNow(db: Tx, groupId: string, dayId: string, problem: DayProblem): Promise<Result<DayPlan, Refusal>> {
  const stored = problem.locks ? await readSavedPlan(groupId, dayId, db) : null
  try {
    return await plannedWithLocks(problem, stored)
  } catch (error) {
    if (error instanceof PlanningBrokeOff) return refuse(planningBrokeOff(error.message))
    throw error
  }
}

const NOTHING_ASKED: Refusal = notNow(
  'nothing-asked',
  'There is nothing to plan yet.',
  'Nobody has asked for a jar.',
  'Wait for claims, or put jars to spare on a recipe.',
)
