import 'server-only'
import type { HistoryLine } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { OWN_RECIPE, recipeOf } from '@/lib/stores/recipes'
import { lockClaimed, moveList } from './claim-rows'
import { settleSplit } from './one-split'

/**
 * Takes a household, whose row is locked, off every waiting list and out of every open split. Preparations are locked by id; each list then moves,
 * in case those behind were waiting for this place.
 */
export async function leaveClaims(tx: Tx, groupId: string, householdId: string, now: Date): Promise<HistoryLine[]> {
  const splits = { groupId, state: 'offered', OR: [{ fromHouseholdId: householdId }, { toHouseholdId: householdId }] }
  const preparations = await tx.preparation.findMany({
    where: { groupId, OR: [{ waitingList: { some: { householdId } } }, { splits: { some: splits } }] },
    select: { id: true, dayId: true, recipeId: true, ownRecipe: OWN_RECIPE },
    orderBy: { id: 'asc' },
  })
  const lines: HistoryLine[] = []
  for (const { id, dayId, ...recipe } of preparations) {
    await lockClaimed(tx, groupId, id)
    const wish = await tx.waiting.findFirst({ where: { groupId, preparationId: id, householdId }, select: { id: true, jars: true } })
    if (wish) {
      await tx.waiting.delete({ where: { groupId_id: { groupId, id: wish.id } } })
      await tx.preparation.update({ where: { groupId_id: { groupId, id } }, data: { waiting: { decrement: wish.jars } } })
      const detail = { preparationId: id, householdId, jars: 0, before: wish.jars }
      lines.push({ subject: `waiting list of preparation ${id}`, detail, dayId })
    }
    for (const split of await tx.claimSplit.findMany({ where: { ...splits, preparationId: id }, select: { id: true } })) {
      await settleSplit(tx, groupId, split.id, 'withdrawn', now)
      lines.push({ subject: `split ${split.id}`, detail: { state: 'withdrawn' }, dayId })
    }
    lines.push(...(await moveList(tx, groupId, id, recipeOf(recipe).allergens)).history)
  }
  return lines
}
