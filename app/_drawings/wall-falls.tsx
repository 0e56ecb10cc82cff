import { type Produce, produceInk } from '@/app/_drawings/produce'
import type { WallFrame } from '@/app/_drawings/wall-frame'
import { wallFall, wallWait } from '@/shared/drawing/wall-fall'
import type { ChartFall, ChartRow } from '@/shared/planning/wall-chart'

const BAR_TOP = 12
const INTO = 5

/** The batch's one line, falling from station to station: kettle to table, table to canner, canner to rack. */
export function WallFalls({ frame }: { frame: WallFrame }) {
  const kinds = new Map(frame.chart.rows.map((row) => [row.id, row.kind]))
  return frame.chart.falls.map((fall) => (
    <Fall key={`${fall.batchId} ${fall.from.rowId} ${fall.to.at}`} fall={fall} to={kinds.get(fall.to.rowId)} frame={frame} />
  ))
}

function Fall({ fall, to, frame }: { fall: ChartFall; to?: ChartRow['kind']; frame: WallFrame }) {
  const { xOf, yOf, isToCome, produceOf } = frame
  const line = { produce: produceOf(fall.preparationId), isToCome: isToCome(fall.toCome) }
  const start = { x: xOf(fall.from.at) - 2, y: yOf(fall.from.rowId) }
  if (to === 'rack') {
    const from = { x: start.x - 6, y: start.y - 4 }
    return <FallLine {...line} path={wallFall(from, { x: from.x + 6, y: yOf(fall.to.rowId) - 4 })} />
  }
  if (to === 'table') return <FallLine {...line} path={wallFall(start, { x: xOf(fall.to.at) + INTO, y: yOf(fall.to.rowId) - BAR_TOP })} />
  return <FallToCanner {...line} fall={fall} start={start} frame={frame} />
}

type FallToCannerProps = { fall: ChartFall; start: { x: number; y: number }; frame: WallFrame; produce: Produce; isToCome: boolean }

/** Filled jars may wait: the line runs level along the canner's row, with a stop at the latest minute; past it, dashed and brass. */
function FallToCanner({ fall, start, frame: { xOf, yOf, heat }, produce, isToCome }: FallToCannerProps) {
  const base = yOf(fall.to.rowId)
  const level = base - heat.full - 16
  const latest = xOf(fall.wait?.stopAt ?? fall.to.at) + INTO
  const wait = wallWait(start, { x: xOf(fall.to.at) + INTO, y: base - 4 }, level, latest)
  return (
    <>
      <FallLine path={wait.path} produce={produce} isToCome={isToCome} />
      {wait.late && <path d={wait.late} className="wait-late" />}
      {wait.stopAt !== null && (isToCome || wait.late) && (
        <path d={`M${wait.stopAt} ${level - 9}v18`} stroke={produceInk(produce)} strokeWidth="4" />
      )}
    </>
  )
}

/** A line with a casing of paper, so that it stays one line where others cross. */
function FallLine({ path, produce, isToCome }: { path: string; produce: Produce; isToCome: boolean }) {
  return (
    <>
      <path d={path} className="casing" />
      <path d={path} className={isToCome ? 'fall to-come' : 'fall'} stroke={produceInk(produce)} />
    </>
  )
}
