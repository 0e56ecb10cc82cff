const STATIONS = [
  { name: 'Kettle', symbol: 'kettle', x: 40, y: 14 },
  { name: 'Fill table', symbol: 'fill', x: 330, y: 44 },
  { name: 'Canner', symbol: 'canner', x: 620, y: 74 },
  { name: 'Rack', symbol: 'rack', x: 910, y: 104 },
] as const

/** The line of a batch: it falls like water from kettle to fill table to canner to rack. On a phone it is left out; the words say the same. */
export function WeirLine() {
  return (
    <svg className="weir" viewBox="0 0 1200 190" role="img" aria-label="From the kettle to the fill table, the canner and the rack">
      <path
        className="weir-line"
        d="M40 78H300Q312 78 312 90V96Q312 108 324 108H590Q602 108 602 120V126Q602 138 614 138H880Q892 138 892 150V156Q892 168 904 168H1180"
      />
      {STATIONS.map(({ name, symbol, x, y }) => (
        <g key={name}>
          <use className="sym" href={`#sym-${symbol}`} x={x} y={y} width="64" height="64" />
          <text className="weir-name" x={x + 76} y={y + 56}>
            {name}
          </text>
        </g>
      ))}
    </svg>
  )
}
