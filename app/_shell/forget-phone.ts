import { clear, createStore, values } from 'idb-keyval'

/** What the shopping list keeps on a phone: its ticks, and the page itself (public/shopping-sw.js). */
const SHOPPING = 'lidsong-shopping'

/**
 * Takes what is kept on this phone away. What was not sent yet is named first: it is lost.
 *
 * @returns false when the person would rather stay
 */
export async function forgetPhone(): Promise<boolean> {
  const ticks = createStore(SHOPPING, 'ticks')
  const kept = (await values<readonly { readonly state: { readonly kind: string } }[]>(ticks)).flat()
  const waiting = kept.filter(({ state }) => state.kind === 'kept').length
  if (waiting > 0 && !window.confirm(question(waiting))) return false
  await clear(ticks)
  const workers = (await navigator.serviceWorker?.getRegistrations()) ?? []
  for (const worker of workers.filter(({ scope }) => scope.endsWith('/shopping'))) {
    worker.active?.postMessage({ forget: true })
    await worker.unregister()
  }
  await globalThis.caches?.delete(SHOPPING)
  return true
}

const question = (waiting: number) =>
  waiting === 1
    ? 'One entry of the shopping list is only on this phone. Sign out and lose it?'
    : `${waiting} entries of the shopping list are only on this phone. Sign out and lose them?`
