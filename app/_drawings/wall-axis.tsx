import type { WallFrame } from '@/app/_drawings/wall-frame'
import { wallTicks } from '@/shared/drawing/wall-scale'
import { formatClock } from '@/shared/time/kitchen-time'

/** Hours across: a line and a label for the hour, dots for the half. */
export function WallAxis({ frame: { hours, bottom } }: { frame: WallFrame }) {
  return wallTicks(hours).map((tick) => (
    <g key={tick.time}>
      {tick.time <= hours.emptyBy ? (
        <path d={`M${tick.x} ${tick.isHour ? 214 : 220}V${bottom}`} className={tick.isHour ? 'hour' : 'half-hour'} />
      ) : (
        <path d={`M${tick.x} 214V226`} className="hour" />
      )}
      {tick.hasLabel && (
        <text x={tick.x - 2} y="206" className="ax">
          {formatClock(tick.time)}
        </text>
      )}
    </g>
  ))
}
