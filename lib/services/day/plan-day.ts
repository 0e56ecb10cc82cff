import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { readDayProblem } from '@/lib/queries/day-problem'
import { applyPlanChange, readPlanChange } from '@/shared/day/apply-plan-change'
import { PlanTheDay } from '@/shared/forms/day'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { sayPlanRefusal } from '@/shared/wording/say-plan'
import { lockDay } from './lock-day'
import { cannotMove, moveDay } from './move-day'
import { plannedOnce } from './remembered-plans'

/**
 * Makes the day's timetable from its claims and keeps it whole: the plan, its batches and its loads, or nothing.
 *
 * A day that is planned already and has not begun may be planned again: batches and loads keep their codes where the new plan has them too,
 * and those it leaves out go. The older plan stays on record.
 */
export const planDay = defineCommand({
  name: 'plan-day',
  summary: 'Plan the day',
  act: 'plan-day',
  schema: PlanTheDay,
  async run({ tx, actor: { groupId } }, { dayId, change }) {
    const day = await lockDay(tx, groupId, dayId)
    const read = day && (await readDayProblem(groupId, dayId, tx))
    if (!day || !read) return refuse(notFound('Canning day'))
    if (day.state !== 'claiming' && day.state !== 'planned') return refuse(cannotMove(day.state, 'Plan the day'))
    if (read.staleProducts.length > 0) return refuse(processChanged(read.staleProducts))
    const changed = withChange(read.problem, change)
    if (!changed.ok) return changed
    const problem = changed.value
    if (problem.preparations.every((each) => each.jarsWanted + (each.spare.kind === 'jars' ? each.spare.jars : 0) === 0))
      return refuse(NOTHING_ASKED)
    const planned = plannedOnce(problem)
    if (!planned.ok) return refuse(sayPlanRefusal(problem, { ...planned.problem, waysOut: [] }))

    if (day.state === 'claiming') {
      const moved = await moveDay(tx, groupId, day, 'planned', 'Plan the day')
      if (!moved.ok) return moved
    }
    const number = await savePlan(tx, groupId, dayId, problem, planned.value)
    const { finishAt, batches, loads, cannerMinutes } = planned.value
    const figures = { number, finishAt, batches: batches.length, loads: loads.length, cannerMinutes: cannerMinutes.needed }
    const detail = { ...figures, change: change ?? null }
    return ok({ reply: { dayId, ...figures }, history: [{ subject: `day ${dayId}`, detail, dayId }] })
  },
})

function withChange(problem: DayProblem, text: string | undefined): Result<DayProblem, Refusal> {
  if (text === undefined) return ok(problem)
  const change = readPlanChange(text)
  if (change?.kind === 'boiled-in-canners') return refuse(badInput({ change: ['Say on the recipes page how the jars are made ready.'] }))
  const changed = change && applyPlanChange(problem, change)
  return changed?.ok ? changed : refuse(badInput({ change: ['Choose one of the changes on the page.'] }))
}

async function savePlan(tx: Tx, groupId: string, dayId: string, problem: DayProblem, plan: DayPlan): Promise<number> {
  const last = await tx.plan.aggregate({ where: { groupId, dayId }, _max: { number: true } })
  const number = (last._max.number ?? 0) + 1
  // What is kept is what JSON keeps: readers parse it with the schema of saved plans.
  const json = (value: unknown) => JSON.parse(JSON.stringify(value)) as object
  await tx.plan.create({ data: { groupId, id: randomUUID(), dayId, number, problem: json(problem), plan: json(plan) } })
  await saveBatches(tx, groupId, dayId, plan)
  await saveLoads(tx, groupId, dayId, plan)
  return number
}

async function saveBatches(tx: Tx, groupId: string, dayId: string, { batches }: DayPlan): Promise<void> {
  const codes = batches.map((batch) => batch.code)
  await tx.batchIngredient.deleteMany({ where: { groupId, batch: { dayId, state: 'planned', code: { notIn: codes } } } })
  await tx.kettleBatch.deleteMany({ where: { groupId, dayId, state: 'planned', code: { notIn: codes } } })
  const kept = await tx.kettleBatch.findMany({ where: { groupId, dayId }, select: { id: true, code: true } })
  const rows = batches.map(({ code, preparationId, kettleId, cookStart, fillEnd, jars }) => ({
    ...{ groupId, id: idOf(kept, code), dayId, code, preparationId, kettleId },
    ...{ plannedStart: cookStart, plannedFilled: fillEnd, plannedJars: jars.typical },
  }))
  await tx.kettleBatch.createMany({ data: rows.filter((row) => !isKept(kept, row.code)) })
  for (const { id, preparationId, kettleId, plannedStart, plannedFilled, plannedJars } of rows.filter((row) => isKept(kept, row.code)))
    await tx.kettleBatch.update({
      where: { groupId_id: { groupId, id } },
      data: { preparationId, kettleId, plannedStart, plannedFilled, plannedJars },
    })
}

async function saveLoads(tx: Tx, groupId: string, dayId: string, { loads }: DayPlan): Promise<void> {
  await tx.cannerLoad.deleteMany({ where: { groupId, dayId, state: 'planned', code: { notIn: loads.map((load) => load.code) } } })
  const kept = await tx.cannerLoad.findMany({ where: { groupId, dayId }, select: { id: true, code: true } })
  const rows = loads.map(({ code, cannerId, operatorId, loadAt, emptyAt }) => ({
    ...{ groupId, id: idOf(kept, code), dayId, code, cannerId, operatorId },
    ...{ plannedLoadAt: loadAt, plannedEmptyAt: emptyAt },
  }))
  await tx.cannerLoad.createMany({ data: rows.filter((row) => !isKept(kept, row.code)) })
  for (const { id, cannerId, operatorId, plannedLoadAt, plannedEmptyAt } of rows.filter((row) => isKept(kept, row.code)))
    await tx.cannerLoad.update({ where: { groupId_id: { groupId, id } }, data: { cannerId, operatorId, plannedLoadAt, plannedEmptyAt } })
}

type Kept = readonly { readonly id: string; readonly code: string }[]

const isKept = (kept: Kept, code: string): boolean => kept.some((row) => row.code === code)

/** The id under which the code is known already, or a new one. */
const idOf = (kept: Kept, code: string): string => kept.find((row) => row.code === code)?.id ?? randomUUID()

const NOTHING_ASKED: Refusal = notNow(
  'nothing-asked',
  'There is nothing to plan yet.',
  'Nobody has asked for a jar.',
  'Wait for claims, or put jars to spare on a recipe.',
)

const processChanged = (titles: readonly string[]): Refusal =>
  notNow(
    'process-changed',
    'No plan: a process is another one now.',
    `${titles.join(' and ')}: the published process at this kitchen is not the one that was looked up when the recipe was chosen.`,
    'Open the recipes and say once more how the jars are made ready; the process is then looked up anew.',
  )
