import type { ModelBatch } from '@/shared/scheduling/day/day-model'

/** Earliest slots at which a batch's stages can begin, were everything free. */
export function headsOf(batch: ModelBatch): { readonly prep: number; readonly cook: number; readonly fill: number; readonly load: number } {
  const cook = batch.ready + Math.min(...batch.teams.map((team) => batch.prepLength[team] ?? 0))
  const fill = cook + batch.cook
  return { prep: batch.ready, cook, fill, load: fill + batch.fill }
}

/** Person-slots of prep at the team size that wastes least. */
export const leastPrepWork = (batch: ModelBatch): number => Math.min(...batch.teams.map((team) => team * (batch.prepLength[team] ?? 0)))
