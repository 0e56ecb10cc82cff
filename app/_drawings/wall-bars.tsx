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
function BatchCode({ from, to, y, produce, nowX, code, isDone }: Span & { code: string; isDone: boolean }) {
  const isOnSolid = produce === 'plum' && isDone
  const width = Math.min(PLATE, to - from - 4)
  const isUnderNow = nowX !== null && nowX > from && nowX < from + PLATE + 14 && to - nowX > PLATE + 12
  const start = isUnderNow ? nowX + 8 : from + Math.min(7, Math.max(2, (to - from - width) / 2))
  return (
    <>
      {!isOnSolid && <rect x={start} y={y - 13} width={width} height="26" fill="var(--sheet)" />}
      <text x={start + width / 2} y={y + 10} textAnchor="middle" className="bt" fill={isOnSolid ? 'var(--sheet)' : produceInk(produce)}>
        {code}
      </text>
    </>
  )
}
