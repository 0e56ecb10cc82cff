import { produceFill, produceInk, produceWash } from '@/app/_drawings/produce'
import type { ProduceOf } from '@/app/_drawings/wall-frame'
import { blockPath, heatPath } from '@/shared/drawing/heat-path'
import type { ChartRow, HeatProfile as LoadHeat, WallChart } from '@/shared/planning/wall-chart'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

const LEFT = 150
const RIGHT = 995
const LANE = 100

/** What each canner does all day, as the heat of its loads, up to the double line. */
export function HeatProfile({ chart, produceOf }: { chart: WallChart; produceOf: ProduceOf }) {
  const canners = chart.rows.filter((row) => row.kind === 'canner')
  const from = Math.min(chart.emptyBy - 1, ...chart.profiles.map(startOf))
  const until = Math.max(chart.emptyBy, chart.finishAt)
  const xOf = (time: KitchenTime) => LEFT + ((time - from) * (RIGHT - LEFT)) / (until - from)
  return (
    <section className="heat-profile" aria-label="Canner lines" {...REACHABLE}>
      <svg viewBox={`0 0 1190 ${canners.length * LANE + 14}`} role="img" aria-label={profileWords(chart, canners)}>
        <ProfileHours chart={chart} from={from} xOf={xOf} />
        {canners.map((canner, lane) => (
          <Lane key={canner.id} canner={canner} top={lane * LANE} xOf={xOf} chart={chart} produceOf={produceOf} />
        ))}
      </svg>
    </section>
  )
}

const REACHABLE = { tabIndex: 0 }

function ProfileHours({ chart, from, xOf }: { chart: WallChart; from: KitchenTime; xOf: (time: KitchenTime) => number }) {
  const limit = xOf(chart.emptyBy)
  return (
    <>
      <text x={LEFT} y="14" className="lx">
        {formatClock(from)}
      </text>
      {Math.abs(chart.spareMinutes) >= 8 && (
        <text
          x={chart.spareMinutes > 0 ? Math.min(xOf(chart.finishAt), limit - 65) : Math.max(xOf(chart.finishAt), limit + 65)}
          y="14"
          textAnchor="middle"
          className="lx"
        >
          {formatClock(chart.finishAt)}
        </text>
      )}
      <text x={limit} y="14" textAnchor="middle" className="lx">
        {formatClock(chart.emptyBy)}
      </text>
    </>
  )
}

type LaneProps = { canner: ChartRow; top: number; xOf: (time: KitchenTime) => number; chart: WallChart; produceOf: ProduceOf }

function Lane({ canner, top, xOf, chart, produceOf }: LaneProps) {
  const loads = chart.profiles.filter((load) => load.rowId === canner.id)
  const end = Math.max(...loads.map(endOf))
  const spare = chart.emptyBy - end
  const limit = xOf(chart.emptyBy)
  return (
    <g transform={`translate(0 ${top})`}>
      <text x="0" y="72" className="lt">
        {canner.label}
      </text>
      <path d={`M${LEFT} 88H${RIGHT}`} className="lane" />
      {loads.map((load) => (
        <Load key={load.loadId} load={load} xOf={xOf} produceOf={produceOf} />
      ))}
      {spare > 0 && <rect x={xOf(end) + 2} y="26" width={Math.max(0, limit - xOf(end) - 4)} height="62" className="spare" />}
      <text x={RIGHT + 16} y="64" className="lm spare-words">
        {spare >= 0 ? `${spare} min spare` : `${-spare} min over`}
      </text>
      <path d={`M${limit - 3} 20V94M${limit + 3} 20V94`} className="lane" />
    </g>
  )
}

function Load({ load, xOf, produceOf }: { load: LoadHeat; xOf: (time: KitchenTime) => number; produceOf: ProduceOf }) {
  const produce = produceOf(load.preparationId)
  const drawn = { xOf, base: 88, full: 62 }
  const middle = xOf((load.block.start + load.block.end) / 2)
  const isSolid = produce === 'plum'
  return (
    <g stroke={produceInk(produce)} strokeWidth="2">
      <path d={heatPath(load.outline, drawn)} fill={produceWash(produce)} />
      <path d={blockPath(load.block.start, load.block.end, drawn)} fill={produceFill(produce)} />
      {!isSolid && <rect x={middle - 15} y="43" width="30" height="28" fill="var(--sheet)" stroke="none" />}
      <text x={middle} y="64" textAnchor="middle" className="lm" fill={isSolid ? 'var(--sheet)' : 'var(--ink)'} stroke="none">
        {load.block.minutes}
      </text>
      <text x={xOf(startOf(load)) + 6} y="50" className="lm" fill={produceInk(produce)} stroke="none">
        {load.label}
      </text>
      <text x={xOf((startOf(load) + endOf(load)) / 2)} y="108" textAnchor="middle" className="lx" stroke="none">
        {endOf(load) - startOf(load)} min
      </text>
    </g>
  )
}

const startOf = (load: LoadHeat) => load.outline[0]?.at ?? load.block.start
const endOf = (load: LoadHeat) => load.outline.at(-1)?.at ?? load.block.end

function profileWords(chart: WallChart, canners: readonly ChartRow[]): string {
  const lines = canners.map((canner) => {
    const loads = chart.profiles.filter((load) => load.rowId === canner.id)
    const words = loads.map((load) => `${load.label} at ${formatClock(startOf(load))} for ${endOf(load) - startOf(load)} min`)
    return `${canner.label}: ${words.join(', ')}`
  })
  return `${lines.join('. ')}. Canners must be empty ${formatClock(chart.emptyBy)}.`
}
