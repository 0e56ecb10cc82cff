import { useId } from 'react'
import { WallAxis } from '@/app/_drawings/wall-axis'
import { WallBars } from '@/app/_drawings/wall-bars'
import { type WallDay, wallFrame } from '@/app/_drawings/wall-day'
import { WallFalls } from '@/app/_drawings/wall-falls'
import { WallLoads } from '@/app/_drawings/wall-loads'
import { WallNow } from '@/app/_drawings/wall-now'
import { WallPanel } from '@/app/_drawings/wall-panel'
import { WallStations } from '@/app/_drawings/wall-stations'
import { type WallStep, WallSteps } from '@/app/_drawings/wall-steps'
import { wallRows } from '@/shared/drawing/wall-rows'
import { WALL } from '@/shared/drawing/wall-scale'

type WallChartProps = {
  day: WallDay
  /** Every task of the day in words; the same chart for who does not see it. */
  steps: readonly WallStep[]
  /** The chart's one sentence: "Finish 21:31, 4 min to spare." */
  says: string
  /** On the wall the list stays hidden from sight; elsewhere it folds out under the chart. */
  onWall?: boolean
}

const FLAG_TOP = 108
const HOURS_TOP = 172

/** The day as lines: stations down in the order food moves, time across. Scrolls sideways on a phone, with the keyboard too. */
export function WallChart({ day, steps, says, onWall }: WallChartProps) {
  const rows = wallRows(day.kettles.length, day.tables.length, day.canners.length)
  const frame = wallFrame(day, rows)
  const top = day.now === null ? HOURS_TOP : FLAG_TOP
  const listId = useId()
  return (
    <div className={onWall ? 'wall-chart on-wall' : 'wall-chart'}>
      <section className="wall-scroll" aria-label="Timetable" {...REACHABLE}>
        <svg
          viewBox={`0 ${top} ${WALL.width} ${rows.bottom + 4 - top}`}
          role="img"
          aria-label={`${says} The same as a list follows.`}
          aria-describedby={listId}
        >
          <WallPanel frame={frame} />
          <WallAxis frame={frame} />
          <WallStations frame={frame} />
          <WallFalls frame={frame} />
          <WallBars frame={frame} />
          <WallLoads frame={frame} />
          <WallNow frame={frame} />
        </svg>
      </section>
      <WallSteps id={listId} steps={steps} onWall={onWall} />
    </div>
  )
}

const REACHABLE = { tabIndex: 0 }
