import { type Produce, produceFill, produceInk } from '@/app/_drawings/produce'
import type { WallFrame } from '@/app/_drawings/wall-frame'
import type { ChartBar } from '@/shared/planning/wall-chart'

const HEIGHT = 30
const PLATE = 54

type Span = { from: number; to: number; y: number; produce: Produce; nowX: number | null }

/** Kettles and fill tables: a bar a batch, its code on the kettle's. */
export function WallBars({ frame }: { frame: WallFrame }) {
  const { chart, xOf, yOf, produceOf, isToCome } = frame
  return chart.bars.map((bar) => {
    const nowX = chart.now === null ? null : xOf(chart.now)
    const span = { from: xOf(bar.start), to: xOf(bar.end), y: yOf(bar.rowId), produce: produceOf(bar.preparationId), nowX }
    const progress = bar.progress === 'to-come' && !isToCome(true) ? 'done' : bar.progress
    return (
      <g key={`${bar.batchId} ${bar.stage}`}>
        <Bar {...span} progress={progress} />
        {bar.stage === 'cook' && <BatchCode {...span} code={bar.code} isDone={progress === 'done'} />}
      </g>
    )
  })
}

function Bar({ from, to, y, produce, nowX, progress }: Span & { progress: ChartBar['progress'] }) {
  const box = { x: from, y: y - HEIGHT / 2, width: Math.max(2, to - from), height: HEIGHT, stroke: produceInk(produce), strokeWidth: 3 }
  if (progress === 'done') return <rect {...box} fill={produceFill(produce)} />
  return (
    <>
      <rect {...box} fill="var(--sheet)" />
      {progress === 'running' && nowX !== null && (
        <rect {...box} width={Math.max(2, nowX - from)} fill={produceFill(produce)} stroke="none" />
      )}
    </>
  )
}

/** Solid and done: the code in paper. Anything else: on a plate of paper. The plate stays clear of the line of now. */
function BatchCode({ code, isDone, ...span }: Span & { code: string; isDone: boolean }) {
  const { y, produce } = span
  const isOnSolid = produce === 'plum' && isDone
  const plate = plateOf(span)
  return (
    <>
      {!isOnSolid && <rect x={plate.x} y={y - 13} width={plate.width} height="26" fill="var(--sheet)" />}
      <text
        x={plate.x + plate.width / 2}
        y={y + 10}
        textAnchor="middle"
        className="bt"
        fill={isOnSolid ? 'var(--sheet)' : produceInk(produce)}
      >
        {code}
      </text>
    </>
  )
}

const NARROWEST = 44
const CLEAR = 8

/** At the bar's left end; where now would cross it, on the side of now that has the room. */
function plateOf({ from, to, nowX }: Span): { x: number; width: number } {
  const width = Math.max(0, Math.min(PLATE, to - from - 4))
  const atEnd = { x: from + Math.min(7, Math.max(2, (to - from - width) / 2)), width }
  if (nowX === null || nowX < atEnd.x - CLEAR || nowX > atEnd.x + width + CLEAR) return atEnd
  const after = Math.min(PLATE, to - 2 - nowX - CLEAR)
  if (after >= NARROWEST) return { x: nowX + CLEAR, width: after }
  const before = Math.min(PLATE, nowX - CLEAR - from - 2)
  return before >= NARROWEST ? { x: from + 2, width: before } : atEnd
}
