import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import type { JarTally } from '@/shared/share/count-day'

/** How the filled jars of a day ended, counted by size, state and seal, those without a process apart. One statement. */
export const jarTallies = (tx: Tx, groupId: string, dayId: string): Promise<JarTally[]> => tx.$queryRaw<JarTally[]>`
  SELECT p.jar_size AS "jarSize", j.state, j.seal, p.process_row_key IS NULL AS "isCold", count(*)::int AS jars, sum(j.lids_used)::int AS "lidsUsed"
  FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
    JOIN preparation p ON p.group_id = b.group_id AND p.id = b.preparation_id
  WHERE j.group_id = ${groupId} AND j.day_id = ${dayId}
  GROUP BY 1, 2, 3, 4`
