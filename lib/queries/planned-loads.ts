import 'server-only'
import { z } from 'zod'
import type { Tx } from '@/lib/db/in-transaction'

/** Of a saved plan, the little that tells which batches a load was planned for. */
const SavedPlan = z.object({
  loads: z.array(z.object({ code: z.string(), batchParts: z.array(z.object({ batchId: z.string() })) })),
  batches: z.array(z.object({ id: z.string(), code: z.string() })),
})

/** Batch codes by the code of the load they are planned for, from the day's newest plan; empty where there is none. One statement. */
export async function plannedBatchesOfLoads(db: Tx, groupId: string, dayId: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const [row] = await db.$queryRaw<{ plan: unknown }[]>`
    SELECT jsonb_build_object('loads', plan->'loads', 'batches', plan->'batches') AS plan
    FROM plan WHERE group_id = ${groupId} AND day_id = ${dayId} ORDER BY number DESC LIMIT 1`
  const saved = SavedPlan.safeParse(row?.plan)
  if (!saved.success) return new Map()
  const codes = new Map(saved.data.batches.map(({ id, code }) => [id, code]))
  return new Map(saved.data.loads.map(({ code, batchParts }) => [code, batchParts.flatMap(({ batchId }) => codes.get(batchId) ?? [])]))
}
