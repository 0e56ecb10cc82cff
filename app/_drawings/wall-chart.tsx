import Link from 'next/link'
import { WallAxis } from '@/app/_drawings/wall-axis'
import { WallBars } from '@/app/_drawings/wall-bars'
import { WallFalls } from '@/app/_drawings/wall-falls'
import { frameForWall, type ProduceOf, wallFrame } from '@/app/_drawings/wall-frame'
import { WallLoads } from '@/app/_drawings/wall-loads'
import { WallNow } from '@/app/_drawings/wall-now'
import { WallPanel } from '@/app/_drawings/wall-panel'
import { WallSoaks } from '@/app/_drawings/wall-soaks'
import { WallStations } from '@/app/_drawings/wall-stations'
import { WALL } from '@/shared/drawing/wall-scale'
import type { WallChart as WallChartFacts } from '@/shared/planning/wall-chart'

type WallChartProps = {
  chart: WallChartFacts
  produceOf: ProduceOf
  /** Where every task of the day stands in words: the same chart for who does not see it. */
  listHref: string
  /** The chart's one sentence: "Finish 21:31, 4 min to spare." */
  says: string
  /** On the wall the way to the list shows only to who reaches it by keyboard. */
  onWall?: boolean
}

const FLAG_TOP = 116
const HOURS_TOP = 172

/** The day as lines: stations down in the order food moves, time across. Scrolls sideways on a phone, with the keyboard too. */
export function WallChart({ chart, produceOf, listHref, says, onWall }: WallChartProps) {
  const frame = onWall ? frameForWall(chart, produceOf) : wallFrame(chart, produceOf)
  const top = chart.now === null ? HOURS_TOP : FLAG_TOP
  return (
    <div className={onWall ? 'wall-chart on-wall' : 'wall-chart'}>
      <section className="wall-scroll" aria-label="Timetable" {...REACHABLE}>
        <svg
          viewBox={`0 ${top} ${WALL.width} ${frame.bottom + 4 - top}`}
          role="img"
          aria-label={`${says} The way to the same in words follows.`}
        >
          <WallPanel frame={frame} />
          <WallAxis frame={frame} />
          <WallStations frame={frame} />
          <WallSoaks frame={frame} />
          <WallFalls frame={frame} />
          <WallBars frame={frame} />
          <WallLoads frame={frame} />
          <WallNow frame={frame} />
        </svg>
      </section>
      <Link className={onWall ? 'skip' : 'way wall-list'} href={listHref} prefetch={false}>
        {onWall ? 'The timetable row by row, in words' : 'The timetable as a list'}
      </Link>
    </div>
  )
}

const REACHABLE = { tabIndex: 0 }
