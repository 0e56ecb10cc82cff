import { produceInk } from '@/app/_drawings/produce'
import type { SoakLane, WallFrame } from '@/app/_drawings/wall-frame'
import { WALL } from '@/shared/drawing/wall-scale'

const LETTER = 15.5
const TEXT = 10

/** Since the evening before: a thin level line from the edge to the first batch, with the household on it and the batches after it. */
export function WallSoaks({ frame }: { frame: WallFrame }) {
  return frame.soaks.map((lane) => <Soak key={`${lane.soak.household} ${lane.soak.batchIds.join(' ')}`} lane={lane} frame={frame} />)
}

function Soak({ lane, frame: { xOf, produceOf } }: { lane: SoakLane; frame: WallFrame }) {
  const { soak, y, until, codes } = lane
  const words = `${soak.household} soaks`
  const plate = words.length * LETTER
  const end = xOf(until)
  const codesAt = Math.max(end, WALL.names + plate) + 12
  const ink = produceInk(produceOf(soak.preparationId))
  return (
    <>
      <path d={`M0 ${y}H${end}`} stroke={ink} className="soak" />
      <path d={`M${end} ${y - 9}v18`} stroke={ink} strokeWidth="4" />
      <rect x={WALL.names - 8} y={y - 14} width={plate + 14} height="28" fill="var(--sheet)" />
      <text x={WALL.names} y={y + TEXT} className="st second">
        {words}
      </text>
      <rect x={codesAt - 4} y={y - 14} width={codes.length * 19 + 8} height="28" fill="var(--sheet)" />
      <text x={codesAt} y={y + TEXT} className="bt" fill={ink}>
        {codes}
      </text>
    </>
  )
}
