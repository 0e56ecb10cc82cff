import { readSavedPlan } from '@/lib/queries/saved-plan'
import { plannedLastStarts } from '@/lib/services/day/remembered-plans'
import { sayLastStarts } from '@/shared/wording/say-replay'

/** After when no kettle is put on any more, by the plan that the floor works to; nothing where there is none. One statement. */
export async function LastKettles({ groupId, dayId }: { groupId: string; dayId: string }) {
  const stored = await readSavedPlan(groupId, dayId)
  if (!stored) return null
  return <p>{sayLastStarts(plannedLastStarts(stored.problem))}</p>
}
