import { createStore, update } from 'idb-keyval'
import type { KeptTick } from '@/shared/supplies/kept-ticks'

/** The one database of the shopping list on this phone; signing out deletes it. */
export const TICK_DATABASE = 'lidsong-shopping'

const store = () => createStore(TICK_DATABASE, 'ticks')

/** Changes what is kept of one list for one person, in one step, and answers how it stands then. It is on the phone when this has answered. */
export async function changeTicks(list: string, change: (ticks: readonly KeptTick[]) => readonly KeptTick[]): Promise<readonly KeptTick[]> {
  let kept: readonly KeptTick[] = []
  await update<readonly KeptTick[]>(
    list,
    (ticks = []) => {
      kept = change(ticks)
      return kept
    },
    store(),
  )
  return kept
}
