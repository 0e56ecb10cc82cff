import { MARK_HEIGHTS, percent, RowMark } from '@/app/_drawings/row-mark'
import type { ProduceOf } from '@/app/_drawings/wall-frame'
import { acrossWindow, type ChartWindow, chartTicks } from '@/shared/drawing/chart-window'
import type { ChartMark } from '@/shared/day/chart-marks'
import type { ChartRow, RowChart as RowChartFacts } from '@/shared/day/chart-rows'
import { formatClock } from '@/shared/time/kitchen-time'

type RowChartProps = { chart: RowChartFacts; window: ChartWindow; produceOf: ProduceOf }

/** The day in rows, as wide as there is room: each row has its name, its work in words for who does not see it, and its lines. */
export function RowChart({ chart, window, produceOf }: RowChartProps) {
  return (
    <div className="row-chart">
      <Hours chart={chart} window={window} />
      <ol>
        {chart.rows.map((row) => (
          <li key={row.id}>
            <h2>
              {row.label}
              {row.note && <span className="quiet"> {row.note}</span>}
            </h2>
            <RowLines row={row} chart={chart} window={window} produceOf={produceOf} />
          </li>
        ))}
      </ol>
    </div>
  )
}

/** What every row is drawn on stands once under this name; each strip of a roll has its own. */
const frameName = ({ from }: ChartWindow) => `row-frame-${from}`

function Hours({ chart, window }: { chart: RowChartFacts; window: ChartWindow }) {
  return (
    <svg className="row-hours" width="100%" height="26" aria-hidden="true">
      <defs>
        <g id={frameName(window)}>
          <Frame chart={chart} window={window} />
        </g>
      </defs>
      {chartTicks(window).map((at, index) => (
        <text key={at} x={percent(acrossWindow(window, at))} y="20" className={index % 2 === 1 ? 'wide-only' : undefined}>
          {formatClock(at)}
        </text>
      ))}
    </svg>
  )
}

function RowLines({ row, chart, window, produceOf }: { row: ChartRow } & RowChartProps) {
  const lanes = row.lanes.map((lane) => ({
    marks: lane.filter((mark) => mark.to > window.from && mark.from < window.to).map((mark) => asDrawn(mark, chart)),
    height: heightOf(lane),
  }))
  const tops = lanes.map((_, index) => lanes.slice(0, index).reduce((sum, lane) => sum + lane.height, 0))
  const height = Math.max(
    28,
    lanes.reduce((sum, lane) => sum + lane.height, 0),
  )
  const isEmpty = lanes.every((lane) => lane.marks.length === 0)
  return (
    <svg
      className={isEmpty ? 'row-lines idle' : 'row-lines'}
      width="100%"
      height={isEmpty ? 28 : height}
      role="img"
      aria-label={saysRow(row, window)}
    >
      <use href={`#${frameName(window)}`} />
      {lanes.map(({ marks }, lane) =>
        marks.map((mark, place) => (
          <RowMark
            key={mark.id}
            mark={mark}
            top={tops[lane] ?? 0}
            roomTo={marks[place + 1]?.from ?? window.to}
            window={window}
            produce={mark.preparationId === null ? null : produceOf(mark.preparationId)}
          />
        )),
      )}
      <Now chart={chart} window={window} />
    </svg>
  )
}

/** Before the day nothing is behind and nothing is to come: the plan is drawn whole, with its patterns. */
const asDrawn = (mark: ChartMark, { now }: RowChartFacts): ChartMark => (now === null ? { ...mark, progress: 'done' } : mark)

const heightOf = (lane: readonly ChartMark[]): number =>
  MARK_HEIGHTS.words + (lane.some((mark) => mark.kind === 'heat') ? MARK_HEIGHTS.heat : MARK_HEIGHTS.bar) + MARK_HEIGHTS.below

/** "Ada: cook J1 17:20 to 17:40; fill J1 17:40 to 17:52." */
function saysRow({ label, lanes }: ChartRow, { from, to }: ChartWindow): string {
  const marks = lanes.flat().filter((mark) => mark.to > from && mark.from < to)
  if (marks.length === 0) return `${label}: nothing from ${formatClock(from)} to ${formatClock(to)}.`
  const said = [...marks]
    .sort((a, b) => a.from - b.from)
    .map((mark) => `${mark.label} ${formatClock(mark.from)} to ${formatClock(mark.to)}`)
  return `${label}: ${said.join('; ')}.`
}

/**
 * Lines across, clean-up, the double line at which canners must be empty, and the closed kitchen. Drawn once and used in every row, where rules
 * of style find each part by one class alone.
 */
function Frame({ chart, window }: { chart: RowChartFacts; window: ChartWindow }) {
  const x = (at: number) => percent(acrossWindow(window, at))
  const isIn = (at: number) => at > window.from && at < window.to
  const cleanUp = acrossWindow(window, Math.max(chart.emptyBy, chart.closedFrom)) - acrossWindow(window, chart.emptyBy)
  return (
    <>
      {cleanUp > 0 && <rect x={x(chart.emptyBy)} y="0" width={percent(cleanUp)} height="100%" className="row-clean-up" />}
      {chart.closedFrom < window.to && <rect x={x(chart.closedFrom)} y="0" width="100%" height="100%" className="row-closed" />}
      {chartTicks(window).map((at) => (
        <line key={at} x1={x(at)} x2={x(at)} y1="0" y2="100%" className="row-tick" />
      ))}
      {isIn(chart.emptyBy) && (
        <>
          <line x1={x(chart.emptyBy)} x2={x(chart.emptyBy)} y1="0" y2="100%" className="row-double" />
          <line x1={x(chart.emptyBy)} x2={x(chart.emptyBy)} y1="0" y2="100%" className="row-double second" />
        </>
      )}
    </>
  )
}

function Now({ chart: { now }, window }: { chart: RowChartFacts; window: ChartWindow }) {
  if (now === null || now < window.from || now > window.to) return null
  const x = percent(acrossWindow(window, now))
  return <line x1={x} x2={x} y1="0" y2="100%" className="now" />
}
