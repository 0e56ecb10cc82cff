'use client'

import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

/** Asks for the page again each minute, so that the line of now stands where it belongs. Nothing moves in between. */
export function AgainEachMinute() {
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), 60_000)
    return () => clearInterval(timer)
  }, [router])
  return null
}
