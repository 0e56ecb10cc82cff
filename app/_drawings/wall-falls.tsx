import { type Produce, produceInk } from '@/app/_drawings/produce'
import { rowOf, type WallBatch, type WallFrame, type WallLoad } from '@/app/_drawings/wall-day'
import { loadMinutes } from '@/shared/drawing/heat-outline'
import { wallFall, wallWait } from '@/shared/drawing/wall-fall'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** The batch's one line, falling from station to station: kettle to table, table to canner, canner to rack. */
export function WallFalls({ frame }: { frame: WallFrame }) {
  const { day } = frame
  return (
    <>
      {day.batches.map((batch) => (
        <g key={batch.id}>
          {batch.soakedBy && <Soak batch={batch} frame={frame} />}
          <ToTable batch={batch} frame={frame} />
        </g>
      ))}
      {day.loads.map((load) => (
        <g key={load.id}>
          {day.batches
            .filter((batch) => load.batchIds.includes(batch.id))
            .map((batch) => (
              <ToCanner key={batch.id} batch={batch} load={load} frame={frame} />
            ))}
          <ToRack load={load} frame={frame} />
        </g>
      ))}
    </>
  )
}

const isToCome = (at: KitchenTime, now: KitchenTime | null): boolean => now !== null && at > now

function Soak({ batch, frame: { day, rows, xOf } }: { batch: WallBatch; frame: WallFrame }) {
  const y = rowOf(day.kettles, rows.kettles, batch.kettleId)
  const end = xOf(batch.cookStart)
  return (
    <>
      <path d={`M214 ${y}H${end}`} stroke={produceInk(batch.produce)} className="soak" />
      {end > 330 && (
        <text x="244" y={y - 8} className="rk halo">
          {batch.soakedBy}
        </text>
      )}
    </>
  )
}

function ToTable({ batch, frame: { day, rows, xOf } }: { batch: WallBatch; frame: WallFrame }) {
  const from = { x: xOf(batch.cookEnd) - 2, y: rowOf(day.kettles, rows.kettles, batch.kettleId) }
  const to = { x: xOf(batch.fillStart) + 5, y: rowOf(day.tables, rows.tables, batch.tableId) - 12 }
  return <Fall path={wallFall(from, to)} produce={batch.produce} isToCome={isToCome(batch.cookEnd, day.now)} />
}

function ToCanner({ batch, load, frame: { day, rows, xOf } }: { batch: WallBatch; load: WallLoad; frame: WallFrame }) {
  const base = rowOf(day.canners, rows.canners, load.cannerId)
  const from = { x: xOf(batch.fillEnd) - 2, y: rowOf(day.tables, rows.tables, batch.tableId) }
  const to = { x: xOf(load.loadAt) + 5, y: base - 4 }
  const wait = wallWait(from, to, base - rows.heat.full - 16, xOf(load.latestLoadAt ?? load.loadAt) + 5)
  const dashed = isToCome(batch.fillEnd, day.now)
  return (
    <>
      <Fall path={wait.path} produce={batch.produce} isToCome={dashed} />
      {wait.late && <path d={wait.late} className="wait-late" />}
      {wait.stopAt !== null && wait.stopAt <= to.x + 200 && (
        <path d={`M${wait.stopAt} ${base - rows.heat.full - 25}v18`} stroke={produceInk(batch.produce)} strokeWidth="4" />
      )}
    </>
  )
}

function ToRack({ load, frame: { day, rows, xOf } }: { load: WallLoad; frame: WallFrame }) {
  const base = rowOf(day.canners, rows.canners, load.cannerId)
  const end = load.loadAt + loadMinutes(load.stages)
  const from = { x: xOf(end) - 8, y: base - 4 }
  return (
    <Fall path={wallFall(from, { x: from.x + 6, y: base + rows.rackBelow - 4 })} produce={load.produce} isToCome={isToCome(end, day.now)} />
  )
}

/** A line with a casing of paper, so that it stays one line where others cross. */
function Fall({ path, produce, isToCome: dashed }: { path: string; produce: Produce; isToCome: boolean }) {
  return (
    <>
      <path d={path} className="casing" />
      <path d={path} className={dashed ? 'fall to-come' : 'fall'} stroke={produceInk(produce)} />
    </>
  )
}
