import { type Produce, produceFill, produceInk, produceWash } from '@/app/_drawings/produce'
import { heatOutline, type LoadStages, loadMinutes } from '@/shared/drawing/heat-outline'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** One load on the organiser's canner lines. */
export type ProfileLoad = { id: string; batch: string; produce: Produce; startsAt: KitchenTime; stages: LoadStages }

/** One canner with its loads in running order. */
export type ProfileCanner = { id: string; name: string; loads: readonly ProfileLoad[] }

type HeatProfileProps = {
  canners: readonly ProfileCanner[]
  from: KitchenTime
  /** When every canner must be empty. */
  emptyBy: KitchenTime
}

const LEFT = 150
const RIGHT = 995
const LANE = 100

/** What each canner does all day, as the heat of its loads, up to the double line. */
export function HeatProfile({ canners, from, emptyBy }: HeatProfileProps) {
  const xOf = (time: KitchenTime) => LEFT + ((time - from) * (RIGHT - LEFT)) / Math.max(1, emptyBy - from)
  const lastEnd = Math.max(from, ...canners.map((canner) => endOf(canner, from)))
  return (
    <section className="heat-profile" aria-label="Canner lines" {...REACHABLE}>
      <svg viewBox={`0 0 1160 ${canners.length * LANE + 14}`} role="img" aria-label={profileWords(canners, from, emptyBy)}>
        <text x={LEFT} y="14" className="lx">
          {formatClock(from)}
        </text>
        {emptyBy - lastEnd >= 8 && (
          <text x={Math.min(xOf(lastEnd), RIGHT - 65)} y="14" textAnchor="middle" className="lx">
            {formatClock(lastEnd)}
          </text>
        )}
        <text x={RIGHT} y="14" textAnchor="middle" className="lx">
          {formatClock(emptyBy)}
        </text>
        {canners.map((canner, lane) => (
          <Lane key={canner.id} canner={canner} top={lane * LANE} xOf={xOf} from={from} emptyBy={emptyBy} />
        ))}
      </svg>
    </section>
  )
}

const REACHABLE = { tabIndex: 0 }

type LaneProps = { canner: ProfileCanner; top: number; xOf: (time: KitchenTime) => number; from: KitchenTime; emptyBy: KitchenTime }

function Lane({ canner, top, xOf, from, emptyBy }: LaneProps) {
  const end = endOf(canner, from)
  const spare = emptyBy - end
  return (
    <g transform={`translate(0 ${top})`}>
      <text x="0" y="72" className="lt">
        {canner.name}
      </text>
      <path d={`M${LEFT} 88H${RIGHT}`} className="lane" />
      {canner.loads.map((load) => (
        <Load key={load.id} load={load} xOf={xOf} />
      ))}
      {spare > 0 && <rect x={xOf(end) + 2} y="26" width={Math.max(0, RIGHT - xOf(end) - 4)} height="62" className="spare" />}
      <text x={RIGHT + 16} y="64" className="lm spare-words">
        {spare >= 0 ? `${spare} spare` : `${-spare} over`}
      </text>
      <path d={`M${RIGHT - 3} 20V94M${RIGHT + 3} 20V94`} className="lane" />
    </g>
  )
}

function Load({ load, xOf }: { load: ProfileLoad; xOf: (time: KitchenTime) => number }) {
  const outline = heatOutline(load.stages, { xOf: (minutes) => xOf(load.startsAt + minutes), base: 88, full: 62, step: 8, half: 24 })
  const middle = (outline.blockFrom + outline.blockTo) / 2
  const isSolid = load.produce === 'plum'
  const minutes = loadMinutes(load.stages)
  return (
    <g stroke={produceInk(load.produce)} strokeWidth="2">
      <path d={outline.load} fill={produceWash(load.produce)} />
      <path d={outline.block} fill={produceFill(load.produce)} />
      {!isSolid && <rect x={middle - 15} y="43" width="30" height="28" fill="var(--sheet)" stroke="none" />}
      <text x={middle} y="64" textAnchor="middle" className="lm" fill={isSolid ? 'var(--sheet)' : 'var(--ink)'} stroke="none">
        {load.stages.process}
      </text>
      <text x={xOf(load.startsAt) + 6} y="50" className="lm" fill={produceInk(load.produce)} stroke="none">
        {load.batch}
      </text>
      <text x={xOf(load.startsAt + minutes / 2)} y="108" textAnchor="middle" className="lx" stroke="none">
        {minutes} min
      </text>
    </g>
  )
}

function endOf(canner: ProfileCanner, from: KitchenTime): KitchenTime {
  return Math.max(from, ...canner.loads.map((load) => load.startsAt + loadMinutes(load.stages)))
}

function profileWords(canners: readonly ProfileCanner[], from: KitchenTime, emptyBy: KitchenTime): string {
  const lines = canners.map((canner) => {
    const loads = canner.loads.map((load) => `${load.batch} ${formatClock(load.startsAt)} for ${loadMinutes(load.stages)} min`)
    return `${canner.name}: ${loads.join(', ') || 'no load'}; empty ${formatClock(endOf(canner, from))}`
  })
  return `${lines.join('. ')}. Canners must be empty ${formatClock(emptyBy)}.`
}
