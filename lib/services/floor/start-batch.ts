import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { StartBatch } from '@/shared/forms/floor'
import { ok, type Result, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import { type FloorDay, lockFloorDay, timeOnDay } from './floor-day'
import { moveBatch, readBatch } from './one-batch'

/** Puts a planned batch on: which kettle, which ingredient lots, when. */
export const startBatch = defineCommand({
  name: 'start-batch',
  summary: 'Start a kettle batch',
  act: 'run-batch',
  schema: StartBatch,
  async run(context, { dayId, batchId, kettleId, lotIds, at }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const batch = await readBatch(context, dayId, batchId)
    if (!batch) return refuse(notFound('Kettle batch'))
    const when = await timeOnDay(context, day.value, at, { kind: 'begin', after: [] })
    if (!when.ok) return when
    const moved = moveBatch(batch, 'prepping', 'cooking')
    if (!moved.ok) return refuse(sayFloorProblem(moved.problem))
    const kettle = await freeKettle(context, day.value, kettleId)
    if (!kettle.ok) return kettle
    const lots = await tx.ingredientLot.findMany({ where: { groupId, dayId, id: { in: lotIds } }, select: { id: true, code: true } })
    if (lots.length !== lotIds.length) return refuse(notFound('Ingredient lot'))

    const where = { groupId_id: { groupId, id: batchId } }
    await tx.kettleBatch.update({ where, data: { state: moved.value, kettleId, startedAt: when.value } })
    await tx.batchIngredient.createMany({ data: lots.map((lot) => ({ groupId, batchId, lotId: lot.id })) })
    const detail = { code: batch.code, at: formatClock(when.value), kettle: kettle.value, lots: lots.map((lot) => lot.code) }
    return ok({
      reply: { batchId, code: batch.code, state: moved.value },
      history: [{ subject: `kettle batch ${batchId}`, detail, dayId }],
    })
  },
})

/** A kettle of the day's kitchen that cooks and holds no other batch. */
async function freeKettle(
  { tx, actor: { groupId } }: CommandContext,
  { id: dayId, kitchenId }: FloorDay,
  kettleId: string,
): Promise<Result<string, Refusal>> {
  const kettle = await tx.kettle.findFirst({
    where: { groupId, id: kettleId, kitchenId },
    select: { label: true, outOfUse: true, batches: { where: { dayId, state: { in: ['cooking', 'filling'] } }, select: { code: true } } },
  })
  if (!kettle) return refuse(notFound('Kettle'))
  if (kettle.outOfUse) return refuse(badInput({ kettleId: [`${kettle.label} is out of use: ${kettle.outOfUse}. Choose another kettle.`] }))
  const [inIt] = kettle.batches
  if (inIt) return refuse(badInput({ kettleId: [`Batch ${inIt.code} is in ${kettle.label}. Fill it first, or choose another kettle.`] }))
  return ok(kettle.label)
}
