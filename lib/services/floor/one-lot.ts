import 'server-only'
import { randomUUID } from 'node:crypto'
import type { CommandContext } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { lotBatchCode } from '@/shared/floor/lot-letters'
import { makeLotNumber } from '@/shared/trace/lot-number'
import type { FloorDay } from './floor-day'

/** The kettle batch that a lot is part of, with the letter of its preparation. */
export interface LotBatch {
  readonly id: string
  readonly code: string
  readonly letter: string
}

/**
 * Opens the lot of a batch and a canner load; without a load, that of a batch whose product has no process, which is numbered as load 0. The day's
 * lock keeps other lots of the day away.
 */
export async function openLot(
  { tx, actor: { groupId } }: CommandContext,
  day: FloorDay,
  { id: batchId, code, letter }: LotBatch,
  load: { readonly id: string; readonly code: string } | null,
): Promise<{ readonly id: string; readonly lotNumber: string }> {
  const preparations = await tx.preparation.findMany({ where: { groupId, dayId: day.id }, select: { letter: true } })
  const letters = preparations.map((each) => each.letter)
  const lotNumber = await freeLotNumber(tx, day, lotBatchCode(code, letter, letters), load === null ? 0 : Number(load.code.slice(1)))
  const data = { groupId, id: randomUUID(), lotNumber, batchId, loadId: load?.id ?? null }
  return tx.lot.create({ data, select: { id: true, lotNumber: true } })
}

/**
 * A lot number that nobody has: another day of the same date, or a group with the same code, may have taken it. Then the load's number is told apart by its
 * hundreds, C106 for the sixth load.
 */
async function freeLotNumber(tx: Tx, { groupCode, date }: FloorDay, batch: string, load: number): Promise<string> {
  const loads = Array.from({ length: 10 }, (_, hundreds) => load + 100 * hundreds).filter((number) => number <= 999)
  const numbers = loads.map((number) => makeLotNumber({ group: groupCode, date, batch, load: number }))
  const taken = await tx.lot.findMany({ where: { lotNumber: { in: numbers } }, select: { lotNumber: true } })
  const free = numbers.find((number) => !taken.some(({ lotNumber }) => lotNumber === number))
  if (!free) throw new Error(`no lot number is left for batch ${batch} of ${date}`)
  return free
}
