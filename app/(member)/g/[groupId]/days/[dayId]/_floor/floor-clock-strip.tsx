import Link from 'next/link'
import { WallClock } from '@/app/_drawings/wall-clock'
import type { FloorClock } from '@/lib/queries/floor-now'

/** The line on top of a floor screen: where we are, and what the kitchen's clock says. */
export function FloorClockStrip({ href, place, clock }: { href: string; place: string; clock: FloorClock }) {
  return (
    <div className="strip floor-clock">
      <span>
        <Link href={href} prefetch={false}>
          {place}
        </Link>
      </span>
      <span className="num">
        {/* Minutes of the kitchen's day read as a time of day of their own. */}
        <WallClock serverNow={Math.round(clock.now * 60_000)} zone="UTC" />
      </span>
    </div>
  )
}
