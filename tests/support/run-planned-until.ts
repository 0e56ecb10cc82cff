import { readSavedPlan } from '@/lib/queries/saved-plan'
import type { AnyCommand } from '@/lib/commands/command'
import type { PrismaClient } from '@/lib/db/generated/client'
import { emptyCanner } from '@/lib/services/floor/empty-canner'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { finishProcess } from '@/lib/services/floor/finish-process'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { reachedTemperature } from '@/lib/services/floor/reached-temperature'
import { startBatch } from '@/lib/services/floor/start-batch'
import { startFilling } from '@/lib/services/floor/start-filling'
import { formatClock } from '@/shared/time/kitchen-time'
import { saved } from './open-evening'

interface Step {
  readonly at: number
  readonly command: AnyCommand
  readonly input: object
}

/**
 * Runs an evening as its plan has it, with the floor's own entries, up to a kitchen minute: what the plan has before it is done.
 *
 * @param notesFirstJar - whether somebody notes when a filling begins
 */
export async function runPlannedUntil(
  client: PrismaClient,
  groupId: string,
  dayId: string,
  lotId: string,
  now: number,
  notesFirstJar = false,
): Promise<void> {
  const stored = await readSavedPlan(groupId, dayId)
  if (!stored) throw new Error('the day is planned')
  const { plan } = stored
  const batchRows = await client.kettleBatch.findMany({ where: { groupId, dayId }, select: { id: true, code: true } })
  const loadRows = await client.cannerLoad.findMany({ where: { groupId, dayId }, select: { id: true, code: true } })
  const rowOf = (code: string) => [...batchRows, ...loadRows].find((row) => row.code === code)?.id ?? ''
  const steps: Step[] = [
    ...plan.batches.flatMap(({ code, kettleId, cookStart, fillStart, fillEnd, jars }) => [
      { at: cookStart, command: startBatch, input: { batchId: rowOf(code), kettleId, lotIds: [lotId] } },
      ...(notesFirstJar ? [{ at: fillStart, command: startFilling, input: { batchId: rowOf(code) } }] : []),
      { at: fillEnd, command: fillBatch, input: { batchId: rowOf(code), jars: jars.typical, lidLotId: 'lids' } },
    ]),
    ...plan.loads.flatMap(({ code, loadAt, boilAt, processEndAt, emptyAt, operatorId, batchParts }) => {
      const loadId = rowOf(code)
      const batchIds = batchParts.map(({ batchId }) => rowOf(plan.batches.find(({ id }) => id === batchId)?.code ?? ''))
      return [
        { at: loadAt, command: loadCanner, input: { loadId, operatorId, batchIds } },
        { at: boilAt, command: reachedTemperature, input: { loadId } },
        { at: processEndAt, command: finishProcess, input: { loadId } },
        { at: emptyAt, command: emptyCanner, input: { loadId } },
      ]
    }),
  ]
  // Of entries at one minute those that free something come first.
  const order: readonly AnyCommand[] = [finishProcess, emptyCanner, startFilling, fillBatch, startBatch, loadCanner, reachedTemperature]
  const inTime = steps.filter(({ at }) => at < now).sort((a, b) => a.at - b.at || order.indexOf(a.command) - order.indexOf(b.command))
  for (const { at, command, input } of inTime) await saved(command, { dayId, at: formatClock(at), ...input })
}
