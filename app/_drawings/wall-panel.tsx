import type { WallFrame } from '@/app/_drawings/wall-frame'
import { blockPath, heatPath } from '@/shared/drawing/heat-path'
import { WALL_TOP } from '@/shared/drawing/wall-rows'
import { WALL } from '@/shared/drawing/wall-scale'
import { formatClock } from '@/shared/time/kitchen-time'

const LEFT = WALL.emptyBy + 16

/** What comes after the double line: clean-up in grey, the closed hall in black, and the key to the drawing where nothing runs over. */
export function WallPanel({ frame: { chart, hours, bottom, xOf } }: { frame: WallFrame }) {
  const height = bottom - WALL_TOP
  return (
    <>
      <rect x={WALL.emptyBy} y={WALL_TOP} width={WALL.closed - WALL.emptyBy} height={height} className="clean-up" />
      <rect x={WALL.closed} y={WALL_TOP} width={WALL.width - WALL.closed} height={height} className="closed" />
      <path d={`M${xOf(hours.emptyBy) - 3} 218V${bottom}M${xOf(hours.emptyBy) + 4} 218V${bottom}`} className="double-line" />
      <text transform={`translate(${WALL.closed + 35} ${bottom - 20}) rotate(-90)`} className="ls closed-words">
        {formatClock(hours.closesAt)} hall closes
      </text>
      {chart.finishAt <= chart.emptyBy ? (
        <PanelWords time={formatClock(hours.emptyBy)} hasKey={height > 520} />
      ) : (
        <LimitWords time={formatClock(hours.emptyBy)} bottom={bottom} />
      )}
    </>
  )
}

function PanelWords({ time, hasKey }: { time: string; hasKey: boolean }) {
  return (
    <>
      <text x={LEFT} y="270" className="lim">
        {time}
      </text>
      <text x={LEFT} y="306" className="ls">
        canners empty
      </text>
      <text x={LEFT} y="342" className="ls">
        then clean-up
      </text>
      {hasKey && <WallKey />}
    </>
  )
}

/** Where loads run over the double line, its words stand along it. */
function LimitWords({ time, bottom }: { time: string; bottom: number }) {
  return (
    <text transform={`translate(${WALL.emptyBy + 34} ${bottom - 14}) rotate(-90)`} className="ls halo">
      {time} empty
    </text>
  )
}

const KEY_LOAD = [
  { at: 0, level: 0 },
  { at: 0, level: 0.13 },
  { at: 22, level: 0.13 },
  { at: 86, level: 1 },
  { at: 134, level: 1 },
  { at: 134, level: 0.38 },
  { at: 164, level: 0.38 },
  { at: 164, level: 0.13 },
  { at: 188, level: 0.13 },
  { at: 188, level: 0 },
]

/** What the shapes mean, drawn with the same hand. */
function WallKey() {
  const drawn = { xOf: (length: number) => LEFT + length, base: 470, full: 74 }
  return (
    <>
      <path d={heatPath(KEY_LOAD, drawn)} className="key-load" />
      <path d={blockPath(86, 134, drawn)} className="key-block" />
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
