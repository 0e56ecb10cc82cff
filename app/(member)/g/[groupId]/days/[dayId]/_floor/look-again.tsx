'use client'

import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

const SECONDS = 20

/** Asks the server again while the page is seen and nobody is typing: what others have entered shows up, what is being entered stays. */
export function LookAgain() {
  const router = useRouter()
  useEffect(() => {
    const ask = () => {
      const isSeen = document.visibilityState === 'visible'
      if (isSeen && !isBeingUsed()) router.refresh()
    }
    const timer = setInterval(ask, SECONDS * 1000)
    document.addEventListener('visibilitychange', ask)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', ask)
    }
  }, [router])
  return null
}

const isBeingUsed = () =>
  document.querySelector('main :is(details[open], input:focus, select:focus, textarea:focus, [aria-busy="true"])') !== null
