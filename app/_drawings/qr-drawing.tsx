/** A square code: rows of dark (true) and light modules, with the four-module border that readers need. */
export function QrDrawing({ modules, label }: { modules: readonly (readonly boolean[])[]; label: string }) {
  const side = modules.length + 8
  const path = modules.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x + 4} ${y + 4}h1v1h-1z` : ''))).join('')
  return (
    <svg className="qr" viewBox={`0 0 ${side} ${side}`} shapeRendering="crispEdges" role="img" aria-label={label}>
      <path d={`M0 0H${side}V${side}H0Z`} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  )
}
