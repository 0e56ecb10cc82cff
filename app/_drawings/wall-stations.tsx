import type { WallFrame } from '@/app/_drawings/wall-day'
import { WALL } from '@/shared/drawing/wall-scale'

/** Names down, each with its line: hair for kettles and tables, ink for canners, two lines for the rack. */
export function WallStations({ frame: { day, rows } }: { frame: WallFrame }) {
  const bars = [
    ...day.kettles.map((station, row) => ({ ...station, y: rows.kettles[row] ?? 0 })),
    ...day.tables.map((station, row) => ({ ...station, y: rows.tables[row] ?? 0 })),
  ]
  return (
    <>
      {bars.map((station) => (
        <g key={station.id}>
          <text x={WALL.names} y={station.y + 10} className="st">
            {station.name}
          </text>
          <path d={`M${WALL.work} ${station.y + 15}H${WALL.emptyBy}`} className="bar-line" />
        </g>
      ))}
      {day.canners.map((canner, row) => (
        <CannerRow key={canner.id} name={canner.name} person={canner.person} base={rows.canners[row] ?? 0} rackBelow={rows.rackBelow} />
      ))}
    </>
  )
}

function CannerRow({ name, person, base, rackBelow }: { name: string; person?: string; base: number; rackBelow: number }) {
  return (
    <>
      <text x={WALL.names} y={base - (person ? 44 : 20)} className="st big">
        {name}
      </text>
      {person && (
        <text x={WALL.names} y={base - 10} className="st">
          {person}
        </text>
      )}
      <path d={`M${WALL.work} ${base}H${WALL.emptyBy}`} className="canner-line" />
      <text x={WALL.names} y={base + rackBelow - 10} className="st second">
        Rack
      </text>
      <path
        d={`M${WALL.work} ${base + rackBelow}H${WALL.emptyBy}M${WALL.work} ${base + rackBelow + 5}H${WALL.emptyBy}`}
        className="rack-line"
      />
    </>
  )
}
