'use client'

import { useKitchenNow } from '@/app/_drawings/kitchen-now'

/** The kitchen's time of day, kept from the server's. `zone` is the kitchen's IANA time zone. */
export function WallClock({ serverNow, zone }: { serverNow: number; zone: string }) {
  const now = useKitchenNow(serverNow)
  return <>{new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(now)}</>
}
