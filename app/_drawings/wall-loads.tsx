import { useId } from 'react'
import { produceFill, produceInk, produceWash } from '@/app/_drawings/produce'
import { doneness, rowOf, type WallFrame, type WallLoad } from '@/app/_drawings/wall-day'
import { type HeatOutline, heatOutline, loadMinutes } from '@/shared/drawing/heat-outline'
import { rackJars } from '@/shared/drawing/rack-jars'

/** Canners: the heat of each load, its published minutes in the block, its jars on the rack, the minutes it was late. */
export function WallLoads({ frame }: { frame: WallFrame }) {
  return (
    <>
      {frame.day.loads.map((load) => (
        <LoadHeat key={load.id} load={load} frame={frame} />
      ))}
      {frame.day.loads.map((load) => (
        <LoadLate key={load.id} load={load} frame={frame} />
      ))}
      <CriticalChain frame={frame} />
    </>
  )
}

const endOf = (load: WallLoad) => load.loadAt + loadMinutes(load.stages)

function LoadHeat({ load, frame }: { load: WallLoad; frame: WallFrame }) {
  const { day, rows, xOf } = frame
  const clipId = useId()
  const base = rowOf(day.canners, rows.canners, load.cannerId)
  const outline = heatOutline(load.stages, { xOf: (minutes) => xOf(load.loadAt + minutes), base, ...rows.heat })
  const state = doneness(load.loadAt, endOf(load), day.now)
  const line = { stroke: produceInk(load.produce), strokeWidth: 3 }
  return (
    <>
      <path d={outline.load} {...line} fill={state === 'done' ? produceWash(load.produce) : 'var(--sheet)'} />
      <path d={outline.block} {...line} fill={state === 'done' ? produceFill(load.produce) : 'var(--sheet)'} />
      {state === 'running' && day.now !== null && (
        <>
          <clipPath id={clipId}>
            <rect x="0" y="0" width={xOf(day.now)} height={base} />
          </clipPath>
          <g clipPath={`url(#${clipId})`}>
            <path d={outline.load} {...line} fill={produceWash(load.produce)} />
            <path d={outline.block} fill={produceFill(load.produce)} />
          </g>
        </>
      )}
      <BlockMinutes load={load} outline={outline} base={base} frame={frame} />
      <text x={xOf(load.loadAt) + 14} y={base - 50} className="lb halo" fill={produceInk(load.produce)}>
        {load.label}
      </text>
      {state === 'done' && <RackedJars load={load} base={base} frame={frame} />}
    </>
  )
}

/** The published minutes stand in the block; while it runs, what is left stands above it instead. */
function BlockMinutes({
  load,
  outline,
  base,
  frame: { day, rows },
}: {
  load: WallLoad
  outline: HeatOutline
  base: number
  frame: WallFrame
}) {
  const { loading, comeUp, vent = 0, pressurise = 0, process } = load.stages
  const boilAt = load.loadAt + loading + comeUp + vent + pressurise
  const state = doneness(boilAt, boilAt + process, day.now)
  const middle = (outline.blockFrom + outline.blockTo) / 2
  const width = outline.blockTo - outline.blockFrom
  if (state === 'running' && day.now !== null) {
    return (
      <text x={outline.blockTo - width + 36} y={base - rows.heat.full - 10} className="mn halo">
        {boilAt + process - day.now} min left
      </text>
    )
  }
  const isSolid = load.produce === 'plum' && state === 'done'
  const middleUp = base - rows.heat.full / 2 + 12
  const fits = width >= 24 * String(process).length
  return (
    <>
      {!isSolid && state === 'done' && fits && (
        <rect x={outline.blockFrom + 3} y={middleUp - 31} width={width - 6} height="38" fill="var(--sheet)" />
      )}
      <text
        x={middle}
        y={base - 30}
        textAnchor="middle"
        className={fits ? 'mn' : 'mn halo'}
        fill={isSolid && fits ? 'var(--sheet)' : 'var(--ink)'}
      >
        {process}
      </text>
    </>
  )
}

function RackedJars({ load, base, frame: { day, rows, xOf } }: { load: WallLoad; base: number; frame: WallFrame }) {
  const start = xOf(endOf(load)) + 7
  const later = day.loads
    .filter((other) => other.cannerId === load.cannerId && endOf(other) > endOf(load))
    .map((other) => xOf(endOf(other)))
  const room = Math.min(...later, xOf(day.hours.emptyBy)) - start
  const { drawn, pitch, width } = rackJars(load.jars, room)
  const foot = base + rows.rackBelow - 1
  if (room < 30 || load.jars === 0) return null
  return (
    <>
      {Array.from({ length: drawn }, (_, jar) => start + jar * pitch).map((x) => (
        <g key={x}>
          <rect
            x={x}
            y={foot - 27}
            width={width}
            height="27"
            fill={produceFill(load.produce)}
            stroke={produceInk(load.produce)}
            strokeWidth="1.5"
          />
          <rect x={x + 1} y={foot - 32} width={Math.max(1, width - 2)} height="3" fill="var(--ink)" />
        </g>
      ))}
      <text x={start + drawn * pitch + 7} y={foot - 3} className="rk halo">
        {load.jars}
      </text>
    </>
  )
}

function LoadLate({ load, frame: { day, rows, xOf } }: { load: WallLoad; frame: WallFrame }) {
  const late = load.loadAt - (load.plannedLoadAt ?? load.loadAt)
  if (late <= 0) return null
  const base = rowOf(day.canners, rows.canners, load.cannerId)
  const from = xOf(load.loadAt - late)
  const to = xOf(load.loadAt)
  return (
    <>
      <rect x={from} y={base - 13} width={Math.max(4, to - from)} height="12" className="late-chip" />
      <text x={to - 3} y={base - 38} textAnchor="end" className="late halo">
        +{late}
      </text>
    </>
  )
}

/** A heavy bar under the loads that fix the finish, cut at each hand-over, and dots for what is left to the double line. */
function CriticalChain({ frame: { day, rows, xOf } }: { frame: WallFrame }) {
  const chain = day.loads
    .filter((load) => load.isCritical && (day.now === null || endOf(load) > day.now))
    .sort((a, b) => a.loadAt - b.loadAt)
  const last = chain.at(-1)
  if (!last) return null
  const lineOf = (load: WallLoad) => rowOf(day.canners, rows.canners, load.cannerId) + 7
  const end = xOf(endOf(last))
  return (
    <>
      {chain.map((load) => (
        <path key={load.id} d={`M${xOf(load.loadAt) + 3} ${lineOf(load)}H${xOf(endOf(load)) - 3}`} className="critical" />
      ))}
      {end < xOf(day.hours.emptyBy) && <path d={`M${end} ${lineOf(last)}H${xOf(day.hours.emptyBy)}`} className="slack" />}
    </>
  )
}
