'use client'

import type { ReactNode } from 'react'
import { useKitchenNow } from '@/app/_drawings/kitchen-now'

/** Shows `before` until that moment and `after` from it on: a thing that may not be done yet says when it may. */
export function OnceItIs({ at, serverNow, before, after }: { at: number; serverNow: number; before: ReactNode; after: ReactNode }) {
  const isTime = useKitchenNow(serverNow) >= at
  return <div aria-live="polite">{isTime ? after : before}</div>
}
