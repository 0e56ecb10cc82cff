import { useEffect } from 'react'

/** By then a phone has drawn the list and somebody reads it. */
const SETTLED_MS = 3_000

/** Keeps this page on the phone, so that it opens without a network. Where a browser cannot, the page works as any other. */
export function useKeptPage(): void {
  useEffect(() => {
    if (!('serviceWorker' in navigator)) return
    const scope = window.location.pathname
    const tell = async () => {
      await navigator.serviceWorker.register('/shopping-sw.js', { scope })
      const { active } = await navigator.serviceWorker.ready
      const used = performance.getEntriesByType('resource').map(({ name }) => name.split('#')[0] ?? name)
      active?.postMessage({ keep: used.filter((name) => name.startsWith(window.location.origin)) })
      await navigator.storage?.persist?.()
    }
    void tell().catch(() => undefined)
    // The check of the entries comes with the first typing: fetched when the page has settled, it is there in the shop too.
    const settled = setTimeout(() => void import('@/shared/forms/shopping').then(tell).catch(() => undefined), SETTLED_MS)
    return () => clearTimeout(settled)
  }, [])
}
