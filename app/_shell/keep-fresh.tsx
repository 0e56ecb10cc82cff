'use client'

import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

/** Asks the server again every minute while somebody can see the page; what stands there stays until the answer is in. */
export function KeepFresh({ seconds = 60 }: { seconds?: number }) {
  const router = useRouter()
  useEffect(() => {
    const ask = () => document.visibilityState === 'visible' && router.refresh()
    const timer = setInterval(ask, seconds * 1000)
    document.addEventListener('visibilitychange', ask)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', ask)
    }
  }, [router, seconds])
  return null
}
