import 'server-only'
import { Prisma } from '@/lib/db/generated/client'

/** Who took the canner of load `l` over from whom, in turns, for a list of columns: by name, with the kitchen minute. */
export const reliefsColumn = Prisma.sql`coalesce((
  SELECT jsonb_agg(jsonb_build_object('from', f.name, 'to', t.name, 'at', o.at) ORDER BY o.turn)
  FROM operator_relief o JOIN person f ON f.group_id = o.group_id AND f.id = o.from_id JOIN person t ON t.group_id = o.group_id AND t.id = o.to_id
  WHERE o.group_id = l.group_id AND o.load_id = l.id), '[]') AS reliefs`
