'use client'

import { useEffect, useState } from 'react'

/** The first page of a document knows when its answer arrived; later ones only know when they are drawn. */
let isFirstDrawing = true

/**
 * The server's time on this device, as milliseconds since 1970, looked at four times a second.
 *
 * The device's own clock may be wrong by days: what counts is how far it was from the server's when the page arrived. The way from the server
 * makes the answer a little late, so a clock made of it runs out a little late too, never early.
 *
 * @param serverNow - the server's time when it made the page, in milliseconds since 1970
 */
export function useKitchenNow(serverNow: number): number {
  const [now, setNow] = useState(serverNow)
  useEffect(() => {
    const offset = serverNow - arrivedAt()
    const look = () => setNow(Date.now() + offset)
    look()
    const timer = setInterval(look, 250)
    document.addEventListener('visibilitychange', look)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', look)
    }
  }, [serverNow])
  return now
}

function arrivedAt(): number {
  const [navigation] = performance.getEntriesByType('navigation')
  const isFirst = isFirstDrawing && navigation instanceof PerformanceNavigationTiming && navigation.responseStart > 0
  isFirstDrawing = false
  return isFirst ? performance.timeOrigin + navigation.responseStart : Date.now()
}
