import { type Produce, produceFill, produceInk } from '@/app/_drawings/produce'
import { type Doneness, doneness, rowOf, type WallBatch, type WallFrame } from '@/app/_drawings/wall-day'

const HEIGHT = 30
const PLATE = 54

/** Kettles and fill tables: a bar a batch, its code on the kettle's. */
export function WallBars({ frame }: { frame: WallFrame }) {
  return frame.day.batches.map((batch) => <BatchBars key={batch.id} batch={batch} frame={frame} />)
}

function BatchBars({ batch, frame: { day, rows, xOf } }: { batch: WallBatch; frame: WallFrame }) {
  const cook = { from: xOf(batch.cookStart), to: xOf(batch.cookEnd), y: rowOf(day.kettles, rows.kettles, batch.kettleId) }
  const fill = { from: xOf(batch.fillStart), to: xOf(batch.fillEnd), y: rowOf(day.tables, rows.tables, batch.tableId) }
  const nowX = day.now === null ? null : xOf(day.now)
  const cooking = doneness(batch.cookStart, batch.cookEnd, day.now)
  return (
    <>
      <Bar {...cook} produce={batch.produce} state={cooking} nowX={nowX} />
      <Bar {...fill} produce={batch.produce} state={doneness(batch.fillStart, batch.fillEnd, day.now)} nowX={nowX} />
      <BatchCode {...cook} code={batch.code} produce={batch.produce} state={cooking} nowX={nowX} />
    </>
  )
}

type BarProps = { from: number; to: number; y: number; produce: Produce; state: Doneness; nowX: number | null }

function Bar({ from, to, y, produce, state, nowX }: BarProps) {
  const box = { x: from, y: y - HEIGHT / 2, width: Math.max(2, to - from), height: HEIGHT, stroke: produceInk(produce), strokeWidth: 3 }
  if (state === 'done') return <rect {...box} fill={produceFill(produce)} />
  return (
    <>
      <rect {...box} fill="var(--sheet)" />
      {state === 'running' && nowX !== null && <rect {...box} width={Math.max(2, nowX - from)} fill={produceFill(produce)} stroke="none" />}
    </>
  )
}

/** Solid and done: the code in paper. Anything else: on a plate of paper. The plate stays clear of the line of now. */
function BatchCode({ from, to, y, produce, state, nowX, code }: BarProps & { code: string }) {
  const isSolid = produce === 'plum' && state === 'done'
  const width = Math.min(PLATE, to - from - 4)
  const isUnderNow = nowX !== null && nowX > from && nowX < from + PLATE + 14 && to - nowX > PLATE + 12
  const start = isUnderNow ? nowX + 8 : from + Math.min(7, Math.max(2, (to - from - width) / 2))
  return (
    <>
      {!isSolid && <rect x={start} y={y - 13} width={width} height="26" fill="var(--sheet)" />}
      <text x={start + width / 2} y={y + 10} textAnchor="middle" className="bt" fill={isSolid ? 'var(--sheet)' : produceInk(produce)}>
        {code}
      </text>
    </>
  )
}
