import { type FoundFinish, gapFall } from '@/shared/drawing/gap-fall'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

const BOX = { width: 350, height: 84 }

/** Room above and below for the three times. */
const WORDS = 22

type Props = { trail: readonly FoundFinish[]; bound: KitchenTime; seconds: number }

/** The finish of a running search, falling over weirs towards the time before which no plan can end. The water left is what could still be gained. */
export function GapFallDrawing({ trail, bound, seconds }: Props) {
  const first = trail[0]?.[1]
  const last = trail.at(-1)?.[1]
  if (first === undefined || last === undefined) return null
  const { line, water, floor, yOf } = gapFall(trail, bound, seconds, BOX)
  const said = `The finish came down from ${formatClock(first)} to ${formatClock(last)} in ${seconds} s; no plan can end before ${formatClock(bound)}.`
  return (
    <svg className="gap-fall" viewBox={`-4 ${-WORDS} ${BOX.width + 8} ${BOX.height + 2 * WORDS + 4}`} role="img" aria-label={said}>
      <path d={water} className="water" />
      <path d={line} className="fall" />
      <path d={`M-4 ${floor}H${BOX.width + 4}`} className="bound" />
      <text x="-4" y="-8">
        {formatClock(first)}
      </text>
      {last < first && (
        <text x={BOX.width + 4} y={yOf(last) - 8} textAnchor="end" className="now">
          {formatClock(last)} so far
        </text>
      )}
      <text x={BOX.width + 4} y={floor + WORDS} textAnchor="end">
        not before {formatClock(bound)}
      </text>
    </svg>
  )
}
