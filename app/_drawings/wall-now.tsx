import type { WallFrame } from '@/app/_drawings/wall-day'

/** The line of now, full height, with its flag above the hours. */
export function WallNow({ frame: { day, rows, xOf } }: { frame: WallFrame }) {
  if (day.now === null) return null
  const x = xOf(day.now)
  return (
    <>
      <path d={`M${x} 162V${rows.bottom}`} className="now" />
      <path d={`M${x - 48} 118H${x + 48}V158L${x} 178L${x - 48} 158Z`} className="now-flag" />
      <text x={x} y="151" textAnchor="middle" className="nw">
        now
      </text>
    </>
  )
}
