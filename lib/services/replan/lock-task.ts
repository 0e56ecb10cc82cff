import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { readSavedPlan, type StoredPlan } from '@/lib/queries/saved-plan'
import { readWorkBegun } from '@/lib/queries/work-begun'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { placeOnDay } from '@/shared/floor/floor-clock'
import { LockTask } from '@/shared/forms/replan'
import type { PlanLock } from '@/shared/planning/day-problem'
import { begunUnder, lockedBatchId } from '@/shared/planning/locks'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { sayLock } from '@/shared/wording/say-replan'

/** Fixes a task of the plan by hand: its minute, its canner or kettle, its person. The next plan goes round it, or says that it cannot. */
export const lockTask = defineCommand({
  name: 'lock-task',
  summary: 'Fix a task by hand',
  act: 'plan-day',
  schema: LockTask,
  async run(context, { dayId, ...input }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['planned', 'running'])
    if (!day.ok) return day
    const stored = await readSavedPlan(groupId, dayId, tx)
    if (!stored) return refuse(notFound('Plan'))
    const at = input.at === undefined ? null : placeOnDay(input.at, day.value)
    const lock: PlanLock = { ...input, at, equipmentId: input.equipmentId ?? null, personId: input.personId ?? null }
    const checked = await checkLock(context, stored, lock)
    if (!checked.ok) return checked

    const { preparationId, batch, task, equipmentId, personId } = lock
    const key = { groupId, dayId, preparationId, batch, task }
    const held = { at, equipmentId, personId }
    const row = await tx.planLock.upsert({
      where: { groupId_dayId_preparationId_batch_task: key },
      create: { ...key, ...held, id: randomUUID() },
      update: held,
      select: { id: true },
    })
    const said = sayLock(stored.problem, stored.plan, lock)
    return ok({
      reply: { dayId, lockId: row.id },
      history: [{ subject: `day ${dayId}`, detail: { lockId: row.id, ...lock, said }, dayId }],
    })
  },
})

/** The batch is in the plan and not begun, the equipment is of the kind, the person is of the group. */
async function checkLock(
  { tx, actor: { groupId } }: CommandContext,
  { plan, problem }: StoredPlan,
  lock: PlanLock,
): Promise<Result<null, Refusal>> {
  const { task, equipmentId, personId } = lock
  if (!plan.batches.some(({ id }) => id === lockedBatchId(lock))) return refuse(notFound('Batch'))
  const begun = begunUnder(plan, await readWorkBegun(groupId, plan.dayId, tx), lock)
  if (begun !== null)
    return refuse(
      notNow('work-begun', `${begun} has begun.`, 'What has begun stays as it is by itself.', 'Fix a task that is still to come.'),
    )
  const things = task === 'load' ? problem.canners : task === 'cook' ? problem.kettles : []
  if (equipmentId !== null && !things.some(({ id }) => id === equipmentId))
    return refuse(badInput({ equipmentId: ['Choose one from the list.'] }))
  if (personId !== null && !problem.people.some(({ id }) => id === personId))
    return refuse(badInput({ personId: ['Choose one from the list.'] }))
  return ok(null)
}
