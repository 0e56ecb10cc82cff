import 'server-only'
import { randomBytes, randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { COLD_PLACE } from '@/lib/queries/share-input'
import { checkFilling, checkLids } from '@/shared/floor/fill-batch'
import { mostJars } from '@/shared/floor/most-jars'
import { FillBatch } from '@/shared/forms/floor'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Mouth } from '@/shared/supplies/lid-age'
import { formatJarLabel } from '@/shared/trace/jar-label'
import { makeSerial, SERIAL_RANDOM_BYTES } from '@/shared/trace/jar-serial'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import { lockFloorDay, timeOnDay } from './floor-day'
import { begunWith, moveBatch, readBatch } from './one-batch'
import { openLot } from './one-lot'
import { takeGlass } from './take-glass'

/**
 * Writes down the jars a batch gave: each gets its serial, its short name and the lot of its lid. Those of a batch without a process go to the
 * fridge or the freezer at once, and have their lot from now on: no canner load will give them one.
 *
 * The lids of the first batch become the day's, so that the next batches need not name them again.
 */
export const fillBatch = defineCommand({
  name: 'fill-batch',
  summary: 'Fill the jars of a batch',
  act: 'run-batch',
  schema: FillBatch,
  async run(context, { dayId, batchId, jars, at, countedAgain, note, ...typed }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const batch = await readBatch(context, dayId, batchId)
    if (!batch) return refuse(notFound('Kettle batch'))
    const moved = batch.state === 'filling' ? moveBatch(batch, 'filled') : moveBatch(batch, 'filling', 'filled')
    if (!moved.ok) return refuse(sayFloorProblem(moved.problem))
    const when = await timeOnDay(context, day.value, at, { kind: 'end', after: begunWith(batch) })
    if (!when.ok) return when
    const high = mostJars(yieldInJars(batch.recipe, batch.jarSize), batch.plannedJars)
    const filling = checkFilling({ jars, high, isCountedAgain: countedAgain === 'yes' })
    if (!filling.ok) return refuse(sayFloorProblem(filling.problem))
    const lidLotId = typed.lidLotId ?? day.value.lidLotId
    const lids = await takeLids(context, lidLotId, jars, day.value.date)
    if (!lids.ok) return lids
    const glass = await takeGlass(context, typed.jarLotId, batchId, jars)
    if (!glass.ok) return glass

    const lot = batch.isCold ? await openLot(context, day.value, batch, null) : null
    const where = { groupId_id: { groupId, id: batchId } }
    await tx.kettleBatch.update({ where, data: { state: moved.value, filledAt: when.value, jarsFilled: jars, note } })
    const made = Array.from({ length: jars }, (_, index) => ({
      groupId,
      id: randomUUID(),
      serial: makeSerial(randomBytes(SERIAL_RANDOM_BYTES)),
      shortName: formatJarLabel({ batch: batch.code, number: index + 1 }),
      dayId,
      batchId,
      lotId: lot?.id ?? null,
      filledAt: when.value,
      lidLotId,
      jarLotId: glass.value,
      ...(batch.isCold ? CHILLED : { whereNow: 'fill table' }),
    }))
    await tx.jar.createMany({ data: made })
    if (day.value.lidLotId === null) await tx.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { lidLotId } })
    const detail = {
      code: batch.code,
      at: formatClock(when.value),
      jars,
      high,
      lids: lids.value.lot,
      glass: glass.value,
      countedAgain,
      note,
      lot: lot?.lotNumber ?? null,
    }
    const reply = { batchId, code: batch.code, state: moved.value, jars, high, lidsLeft: lids.value.left, jarIds: made.map(({ id }) => id) }
    return ok({ reply, history: [{ subject: `kettle batch ${batchId}`, detail, dayId }] })
  },
})

/** What no canner takes must be kept cold from now on: it is never sealed, and nobody checks a seal. */
const CHILLED = { state: 'unsealed', whereNow: COLD_PLACE }

/** The lot of lids that are used, with enough of them left; flat lids are for one use, so every lid on a jar is gone. */
export async function takeLids(
  { tx, actor: { groupId } }: CommandContext,
  lidLotId: string | null,
  jars: number,
  date: string,
): Promise<Result<{ readonly lot: string; readonly left: number }, Refusal>> {
  if (lidLotId === null) return refuse(badInput({ lidLotId: ['Choose the lot of the lids: a bad lid lot must be found again.'] }))
  const [lot] = await tx.$queryRaw<{ lotCode: string; mouth: string; count: number; boughtOn: string | null; used: bigint }[]>`
    SELECT s.lot_code AS "lotCode", s.mouth, s.count, s.bought_on::text AS "boughtOn",
      (SELECT coalesce(sum(j.lids_used), 0) FROM jar j WHERE j.group_id = s.group_id AND j.lid_lot_id = s.id) AS used
    FROM supply_lot s WHERE s.group_id = ${groupId} AND s.id = ${lidLotId} AND s.kind = 'lid' FOR UPDATE OF s`
  if (!lot) return refuse(notFound('Lot of lids'))
  const stock = { lot: lot.lotCode, mouth: lot.mouth as Mouth, count: lot.count, used: Number(lot.used), since: lot.boughtOn }
  const left = checkLids(stock, jars, date)
  return left.ok ? ok({ lot: lot.lotCode, left: left.value }) : refuse(sayFloorProblem(left.problem))
}
