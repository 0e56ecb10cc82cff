import type { WallFrame } from '@/app/_drawings/wall-frame'
import { WALL } from '@/shared/drawing/wall-scale'
import type { ChartRow } from '@/shared/planning/wall-chart'

/** Names down, each with its line: hair for kettles and tables, ink for canners, two lines for the rack. */
export function WallStations({ frame: { chart, yOf, isCrowded } }: { frame: WallFrame }) {
  const Line = isCrowded ? CrowdLine : Station
  return chart.rows.map((row) => <Line key={row.id} row={row} y={yOf(row.id)} />)
}

function Station({ row, y }: { row: ChartRow; y: number }) {
  if (row.kind === 'canner') return <CannerLine row={row} y={y} />
  if (row.kind === 'rack') {
    return (
      <>
        <text x={WALL.names} y={y - 10} className="st second">
          {row.label}
        </text>
        <path d={`M${WALL.work} ${y}H${WALL.emptyBy}M${WALL.work} ${y + 5}H${WALL.emptyBy}`} className="rack-line" />
      </>
    )
  }
  return (
    <>
      <text x={WALL.names} y={y + 10} className="st">
        {row.label}
      </text>
      <path d={`M${WALL.work} ${y + 15}H${WALL.emptyBy}`} className="bar-line" />
    </>
  )
}

/** A canner and who minds it on one line. */
function CrowdLine({ row, y }: { row: ChartRow; y: number }) {
  return (
    <>
      <text x={WALL.names} y={y - 8} className="st">
        <tspan className="crowd-name">{row.label}</tspan>
        {row.person && <tspan className="second"> {row.person}</tspan>}
      </text>
      <path d={`M${WALL.work} ${y}H${WALL.emptyBy}`} className="canner-line" />
    </>
  )
}

function CannerLine({ row, y }: { row: ChartRow; y: number }) {
  return (
    <>
      <text x={WALL.names} y={y - (row.person ? 44 : 20)} className="st big">
        {row.label}
      </text>
      {row.person && (
        <text x={WALL.names} y={y - 10} className="st">
          {row.person}
        </text>
      )}
      <path d={`M${WALL.work} ${y}H${WALL.emptyBy}`} className="canner-line" />
    </>
  )
}
