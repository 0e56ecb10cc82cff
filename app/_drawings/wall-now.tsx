import type { WallFrame } from '@/app/_drawings/wall-frame'

/** The line of now, full height, with its flag above the hours. */
export function WallNow({ frame: { chart, bottom, xOf } }: { frame: WallFrame }) {
  if (chart.now === null) return null
  const x = xOf(chart.now)
  return (
    <>
      <path d={`M${x} 162V${bottom}`} className="now" />
      <path d={`M${x - 48} 118H${x + 48}V158L${x} 178L${x - 48} 158Z`} className="now-flag" />
      <text x={x} y="151" textAnchor="middle" className="nw">
        now
      </text>
    </>
  )
}
