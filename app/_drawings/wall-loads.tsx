import { useId } from 'react'
import { produceFill, produceInk, produceWash } from '@/app/_drawings/produce'
import type { WallFrame } from '@/app/_drawings/wall-frame'
import { CROWD_INSET, crowdMinutesAt } from '@/shared/drawing/crowd-rows'
import { blockPath, heatPath } from '@/shared/drawing/heat-path'
import { rackJars } from '@/shared/drawing/rack-jars'
import { WALL } from '@/shared/drawing/wall-scale'
import type { HeatProfile } from '@/shared/planning/wall-chart'

type LoadProps = { load: HeatProfile; frame: WallFrame }

/** Canners: the heat of each load, its published minutes in the block, its jars on the rack, the minutes it was late. */
export function WallLoads({ frame }: { frame: WallFrame }) {
  const { chart, xOf, yOf } = frame
  return (
    <>
      {chart.profiles.map((load) => (
        <LoadHeat key={load.loadId} load={load} frame={frame} />
      ))}
      {chart.chips.map((chip) => (
        <g key={chip.loadId}>
          <rect
            x={xOf(chip.from)}
            y={yOf(chip.rowId) - 13}
            width={Math.max(4, xOf(chip.to) - xOf(chip.from))}
            height="12"
            className="late-chip"
          />
          <text x={xOf(chip.to) - 3} y={yOf(chip.rowId) - 38} textAnchor="end" className="late halo">
            {chip.label}
          </text>
        </g>
      ))}
      <CriticalChain frame={frame} />
    </>
  )
}

const startOf = (load: HeatProfile) => load.outline[0]?.at ?? load.block.start
const endOf = (load: HeatProfile) => load.outline.at(-1)?.at ?? load.block.end

/** A plan that has not begun is drawn as it will be when it is done. */
const isDrawnDone = ({ load, frame }: LoadProps) =>
  load.progress === 'done' || !frame.isToCome(load.progress === 'to-come' || load.progress === 'running')

function LoadHeat({ load, frame }: LoadProps) {
  const { chart, heat, xOf, yOf, produceOf, isCrowded } = frame
  const clipId = useId()
  const base = yOf(load.rowId)
  const produce = produceOf(load.preparationId)
  const isDone = isDrawnDone({ load, frame })
  const drawn = { xOf, base, full: heat.full }
  const outline = heatPath(load.outline, drawn)
  const block = blockPath(load.block.start, load.block.end, drawn)
  const line = { stroke: produceInk(produce), strokeWidth: 3 }
  return (
    <>
      <path d={outline} {...line} fill={isDone ? produceWash(produce) : 'var(--sheet)'} />
      <path d={block} {...line} fill={isDone ? produceFill(produce) : 'var(--sheet)'} />
      {load.progress === 'running' && chart.now !== null && (
        <>
          <clipPath id={clipId}>
            <rect x="0" y="0" width={xOf(chart.now)} height={base} />
          </clipPath>
          <g clipPath={`url(#${clipId})`}>
            <path d={outline} {...line} fill={produceWash(produce)} />
            <path d={block} fill={produceFill(produce)} />
          </g>
        </>
      )}
      <BlockMinutes load={load} frame={frame} />
      {load.vent && <Steam at={xOf((load.vent.start + load.vent.end) / 2)} foot={base - heat.full * 0.7} ink={produceInk(produce)} />}
      <text
        x={xOf(startOf(load)) + (isCrowded ? CROWD_INSET : 14)}
        y={base - (isCrowded ? 8 : 50)}
        className={isCrowded ? 'lb crowd halo' : 'lb halo'}
        fill={produceInk(produce)}
      >
        {load.label}
      </text>
      {isDone && <RackedJars load={load} frame={frame} />}
    </>
  )
}

/** Three strokes over the shelf: the pressure canner blows off steam. */
const Steam = ({ at, foot, ink }: { at: number; foot: number; ink: string }) => (
  <path d={[-10, 0, 10].map((x) => `M${at + x} ${foot}q4 -6 0 -12`).join('')} fill="none" stroke={ink} strokeWidth="3" />
)

/** The published minutes stand in the block; while it runs, what is left stands above it instead. */
function BlockMinutes({ load, frame }: LoadProps) {
  const { chart, heat, xOf, yOf, produceOf, isCrowded } = frame
  const base = yOf(load.rowId)
  const [from, to] = [xOf(load.block.start), xOf(load.block.end)]
  if (load.minutesLeft !== null && chart.now !== null) {
    return (
      <text x={xOf(chart.now) + 8} y={isCrowded ? base - 8 : base - heat.full - 10} className={isCrowded ? 'mn crowd halo' : 'mn halo'}>
        {load.minutesLeft} min left
      </text>
    )
  }
  if (isCrowded) return <CrowdMinutes load={load} frame={frame} />
  const { minutes } = load.block
  const isFilled = isDrawnDone({ load, frame }) || (chart.now !== null && load.block.end <= chart.now)
  const fits = to - from >= 24 * String(minutes).length
  const isOnSolid = isFilled && fits && produceOf(load.preparationId) === 'plum'
  const foot = base - heat.full / 2 + 12
  return (
    <>
      {isFilled && !isOnSolid && fits && <rect x={from + 3} y={foot - 31} width={to - from - 6} height="38" fill="var(--sheet)" />}
      <text
        x={(from + to) / 2}
        y={foot}
        textAnchor="middle"
        className={fits ? 'mn' : 'mn halo'}
        fill={isOnSolid ? 'var(--sheet)' : 'var(--ink)'}
      >
        {minutes}
      </text>
    </>
  )
}

/** On a crowded wall the minutes stand clear of the load's name, and are left out where the load is too short for both. */
function CrowdMinutes({ load, frame: { xOf, yOf } }: LoadProps) {
  const { start, end, minutes } = load.block
  const at = crowdMinutesAt(load.label, minutes, { from: xOf(startOf(load)), middle: (xOf(start) + xOf(end)) / 2, to: xOf(endOf(load)) })
  if (at === null) return null
  return (
    <text x={at} y={yOf(load.rowId) - 8} textAnchor="middle" className="mn crowd halo" fill="var(--ink)">
      {minutes}
    </text>
  )
}

function RackedJars({ load, frame: { chart, xOf, yOf, produceOf } }: LoadProps) {
  const rackAt = chart.falls.find((fall) => fall.from.rowId === load.rowId && fall.from.at === endOf(load))?.to.rowId
  const start = xOf(endOf(load)) + 7
  const later = chart.profiles.filter((other) => other.rowId === load.rowId && endOf(other) > endOf(load)).map((other) => xOf(endOf(other)))
  const limit = endOf(load) < chart.emptyBy ? xOf(chart.emptyBy) - DOUBLE_LINE : WALL.closed
  const room = Math.min(...later, limit) - start
  if (!rackAt || load.jars === 0) return null
  const { drawn, pitch, width, says } = rackJars(load.jars, room)
  const figureAt = drawn === 0 ? start : start + drawn * pitch + 7
  const foot = yOf(rackAt) - 1
  const produce = produceOf(load.preparationId)
  const places = Array.from({ length: drawn }, (_, jar) => start + jar * pitch)
  return (
    <>
      {drawn > 0 && (
        <>
          <path d={jarsPath(places, foot, width)} className="rack-jars" fill={produceFill(produce)} stroke={produceInk(produce)} />
          <path d={lidsPath(places, foot, width)} className="rack-lids" />
        </>
      )}
      <text x={figureAt} y={foot - 3} className="rk halo">
        {says}
      </text>
    </>
  )
}

const DOUBLE_LINE = 5

/** All jars of a load as one outline and all their lids as another: a hundred loads are some hundred jars. */
const jarsPath = (places: readonly number[], foot: number, width: number): string =>
  places.map((x) => `M${round(x)} ${foot - 27}h${round(width)}v27h-${round(width)}z`).join('')
const lidsPath = (places: readonly number[], foot: number, width: number): string =>
  places.map((x) => `M${round(x + 1)} ${foot - 32}h${round(Math.max(1, width - 2))}v3h-${round(Math.max(1, width - 2))}z`).join('')

const round = (length: number): number => Math.round(length * 10) / 10

const CHAIN_BELOW = 7

/** A heavy bar under the loads that fix the finish, cut at each hand-over, and dots for what is left to the double line. */
function CriticalChain({ frame: { chart, xOf, yOf } }: { frame: WallFrame }) {
  const { slack, now } = chart
  return (
    <>
      {chart.criticalChain
        .filter((link) => now === null || link.to > now)
        .map((link) => (
          <path key={link.loadId} d={`M${xOf(link.from) + 3} ${yOf(link.rowId) + CHAIN_BELOW}H${xOf(link.to) - 3}`} className="critical" />
        ))}
      {slack && <path d={`M${xOf(slack.from)} ${yOf(slack.rowId) + CHAIN_BELOW}H${xOf(slack.to)}`} className="slack" />}
    </>
  )
}
