import type { WallFrame } from '@/app/_drawings/wall-day'
import { heatOutline, loadMinutes } from '@/shared/drawing/heat-outline'
import { WALL_TOP } from '@/shared/drawing/wall-rows'
import { WALL } from '@/shared/drawing/wall-scale'
import { formatClock } from '@/shared/time/kitchen-time'

const LEFT = WALL.emptyBy + 16

/** What comes after the double line: clean-up in grey, the closed hall in black, and the key to the drawing where nothing runs over. */
export function WallPanel({ frame: { day, rows, xOf } }: { frame: WallFrame }) {
  const height = rows.bottom - WALL_TOP
  const runsOver = day.loads.some((load) => load.loadAt + loadMinutes(load.stages) > day.hours.emptyBy)
  return (
    <>
      <rect x={WALL.emptyBy} y={WALL_TOP} width={WALL.closed - WALL.emptyBy} height={height} className="clean-up" />
      <rect x={WALL.closed} y={WALL_TOP} width={WALL.width - WALL.closed} height={height} className="closed" />
      <path
        d={`M${xOf(day.hours.emptyBy) - 3} 218V${rows.bottom}M${xOf(day.hours.emptyBy) + 4} 218V${rows.bottom}`}
        className="double-line"
      />
      <text x={LEFT} y="270" className="lim">
        {formatClock(day.hours.emptyBy)}
      </text>
      <text x={LEFT} y="306" className="ls">
        canners empty
      </text>
      <text x={LEFT} y="342" className="ls">
        then clean-up
      </text>
      <text transform={`translate(${WALL.closed + 35} ${rows.bottom - 20}) rotate(-90)`} className="ls closed-words">
        {formatClock(day.hours.closesAt)} hall closes
      </text>
      {!runsOver && height > 520 && <WallKey />}
    </>
  )
}

/** What the shapes mean, drawn with the same hand. */
function WallKey() {
  const stages = { loading: 5, comeUp: 12, process: 10, rest: 5, unloading: 5 }
  const outline = heatOutline(stages, { xOf: (minutes) => LEFT + minutes * 5.08, base: 470, full: 74, step: 10, half: 28 })
  return (
    <>
      <path d={outline.load} className="key-load" />
      <path d={outline.block} className="key-block" />
      <text x={LEFT} y="508" className="ls">
        slope: heating
      </text>
      <text x={LEFT} y="542" className="ls">
        block: boil, min
      </text>
      <text x={LEFT} y="576" className="ls">
        step: resting
      </text>
      <path d={`M${LEFT} 612h188`} className="critical" />
      <text x={LEFT} y="652" className="ls">
        decides finish
      </text>
      <rect x={LEFT} y="678" width="36" height="13" className="late-chip" />
      <text x={LEFT + 48} y="694" className="ls">
        minutes late
      </text>
      <path d={`M${LEFT} 732h36`} className="fall to-come" stroke="var(--ink)" />
      <text x={LEFT + 48} y="742" className="ls">
        still to come
      </text>
    </>
  )
}
