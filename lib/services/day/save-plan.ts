import 'server-only'
import { randomUUID } from 'node:crypto'
import type { Tx } from '@/lib/db/in-transaction'
import { momentOfPlan } from '@/lib/services/replan/order-of-plans'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** How a plan came about; left out: the day was planned as a whole. */
export interface MadeBy {
  readonly madeBy: 'plan' | 'replan' | 'undo'
  readonly reason: string
  readonly madeAt: KitchenTime
  readonly takenFrom?: number
}

/**
 * Keeps a plan whole, the plan with its batches and its loads, under the day's next number, which it gives back. The day must be locked.
 *
 * Batches and loads keep their ids where the new plan has their codes too; those that it leaves out go, unless work on them has begun.
 */
export async function savePlan(tx: Tx, groupId: string, dayId: string, problem: DayProblem, plan: DayPlan, made?: MadeBy): Promise<number> {
  const last = await tx.plan.aggregate({ where: { groupId, dayId }, _max: { number: true } })
  const number = (last._max.number ?? 0) + 1
  // What is kept is what JSON keeps: readers parse it with the schema of saved plans.
  const json = (value: unknown) => JSON.parse(JSON.stringify(value)) as object
  const createdAt = await momentOfPlan(tx, groupId, dayId)
  await tx.plan.create({ data: { groupId, id: randomUUID(), dayId, number, problem: json(problem), plan: json(plan), ...made, createdAt } })
  await saveBatches(tx, groupId, dayId, plan)
  await saveLoads(tx, groupId, dayId, plan)
  return number
}

async function saveBatches(tx: Tx, groupId: string, dayId: string, { batches }: DayPlan): Promise<void> {
  const codes = batches.map((batch) => batch.code)
  await tx.batchIngredient.deleteMany({ where: { groupId, batch: { dayId, state: 'planned', code: { notIn: codes } } } })
  await tx.kettleBatch.deleteMany({ where: { groupId, dayId, state: 'planned', code: { notIn: codes } } })
  const rows = batches.map(({ code, preparationId, kettleId, cookStart, fillEnd, jars }) => ({
    ...{ id: randomUUID(), code, preparation_id: preparationId, kettle_id: kettleId },
    ...{ planned_start: cookStart, planned_filled: fillEnd, planned_jars: jars.typical },
  }))
  await tx.$executeRaw`
    INSERT INTO kettle_batch (group_id, id, day_id, code, preparation_id, kettle_id, planned_start, planned_filled, planned_jars)
    SELECT ${groupId}, id, ${dayId}, code, preparation_id, kettle_id, planned_start, planned_filled, planned_jars
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS r(
      id text, code text, preparation_id text, kettle_id text, planned_start int, planned_filled int, planned_jars int)
    ON CONFLICT (group_id, day_id, code) DO UPDATE SET preparation_id = excluded.preparation_id, kettle_id = excluded.kettle_id,
      planned_start = excluded.planned_start, planned_filled = excluded.planned_filled, planned_jars = excluded.planned_jars
    WHERE kettle_batch.state = 'planned'`
}

async function saveLoads(tx: Tx, groupId: string, dayId: string, { loads }: DayPlan): Promise<void> {
  await tx.cannerLoad.deleteMany({ where: { groupId, dayId, state: 'planned', code: { notIn: loads.map((load) => load.code) } } })
  const rows = loads.map(({ code, cannerId, operatorId, loadAt, emptyAt }) => ({
    ...{ id: randomUUID(), code, canner_id: cannerId, operator_id: operatorId },
    ...{ planned_load_at: loadAt, planned_empty_at: emptyAt },
  }))
  await tx.$executeRaw`
    INSERT INTO canner_load (group_id, id, day_id, code, canner_id, operator_id, planned_load_at, planned_empty_at)
    SELECT ${groupId}, id, ${dayId}, code, canner_id, operator_id, planned_load_at, planned_empty_at
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS r(
      id text, code text, canner_id text, operator_id text, planned_load_at int, planned_empty_at int)
    ON CONFLICT (group_id, day_id, code) DO UPDATE SET canner_id = excluded.canner_id, operator_id = excluded.operator_id,
      planned_load_at = excluded.planned_load_at, planned_empty_at = excluded.planned_empty_at
    WHERE canner_load.state = 'planned'`
}
