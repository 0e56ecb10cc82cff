import 'server-only'
import { database } from '@/lib/db/client'
import { type BatchRow, batchRows, type LoadRow, loadRows } from '@/lib/queries/floor-rows'

/** One batch with what went into it, the loads that could take its jars, and its jars. */
export interface FloorBatchPage {
  readonly batch: BatchRow
  readonly lots: readonly { readonly id: string; readonly code: string; readonly item: string; readonly from: string }[]
  readonly openLoads: readonly LoadRow[]
  /** Loads its jars went through. */
  readonly loads: readonly string[]
}

/** Reads a batch of the day; null when there is none. Three statements. */
export async function floorBatch(groupId: string, dayId: string, batchId: string): Promise<FloorBatchPage | null> {
  const db = database()
  const [[batch], loads, lots] = await Promise.all([
    batchRows(db, groupId, dayId, batchId),
    loadRows(db, groupId, dayId),
    db.$queryRaw<{ id: string; code: string; item: string; from: string }[]>`
      SELECT l.id, l.code, l.item, coalesce(h.name, l.source) AS "from"
      FROM batch_ingredient i JOIN ingredient_lot l ON l.group_id = i.group_id AND l.id = i.lot_id
        LEFT JOIN household h ON h.group_id = l.group_id AND h.id = l.household_id
      WHERE i.group_id = ${groupId} AND i.batch_id = ${batchId} ORDER BY l.code`,
  ])
  if (!batch) return null
  return {
    batch,
    lots,
    openLoads: loads.filter(({ state }) => state === 'planned'),
    loads: loads.filter((load) => load.batches.includes(batch.code)).map(({ code }) => code),
  }
}

/** One load with its jars and the batches whose jars wait. */
export interface FloorLoadPage {
  readonly load: LoadRow
  readonly jars: readonly { readonly id: string; readonly shortName: string; readonly state: string }[]
  readonly waiting: readonly BatchRow[]
}

/** Reads a load of the day; null when there is none. Three statements. */
export async function floorLoad(groupId: string, dayId: string, loadId: string): Promise<FloorLoadPage | null> {
  const db = database()
  const [[load], jars, batches] = await Promise.all([
    loadRows(db, groupId, dayId, loadId),
    db.$queryRaw<{ id: string; shortName: string; state: string }[]>`
      SELECT j.id, j.short_name AS "shortName", j.state FROM jar_load jl JOIN jar j ON j.group_id = jl.group_id AND j.id = jl.jar_id
      WHERE jl.group_id = ${groupId} AND jl.load_id = ${loadId} ORDER BY length(j.short_name), j.short_name`,
    batchRows(db, groupId, dayId),
  ])
  return load ? { load, jars, waiting: batches.filter(({ waiting }) => waiting > 0) } : null
}
