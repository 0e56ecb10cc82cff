import { type Produce, produceFill, produceInk } from '@/app/_drawings/produce'
import type { Method } from '@/shared/kitchen/methods'

type CannerCutProps = {
  /** "Canner 2" */
  name: string
  produce: Produce
  jars: number
  capacity: number
  method?: Method
  /** "pint": the jar's name, for the words. */
  jarName: string
}

const LONGEST_TIER = 12

/** A canner cut open: its jars by pattern under the water, its free places dashed. */
export function CannerCut({ name, produce, jars, capacity, method = 'boiling-water', jarName }: CannerCutProps) {
  const free = Math.max(0, capacity - jars)
  const isFull = method === 'boiling-water'
  const places = cannerPlaces(Math.max(jars, capacity))
  const words = `${name}: ${jars} ${jarName}${isFull ? ' under water' : ''}, ${free === 0 ? 'no place' : free} free`
  return (
    <svg className="canner-cut" viewBox="0 0 358 132" role="img" aria-label={words}>
      <path d={isFull ? 'M14 30V124H344V30Z' : 'M14 104V124H344V104Z'} className="water-quiet" />
      {places.map(({ place, ...box }) =>
        place < jars ? <JarInWater key={place} {...box} produce={produce} /> : <FreePlace key={place} {...box} />,
      )}
      <path d={isFull ? WAVES : 'M14 104H344'} className="waterline" />
      <path d={isFull ? 'M2 4H12V126H346V4H356' : 'M12 22V126H346V22M2 22H356M40 22V8H318V22M179 8V1'} className="rim" />
    </svg>
  )
}

const WAVES = `M14 30${'q7.5 -9 15 0t15 0'.repeat(11)}`

type Box = { x: number; y: number; width: number; height: number }

type Place = Box & { place: number }

/** Places in one tier, or in two when one would make them too thin to count. */
function cannerPlaces(capacity: number): Place[] {
  const tiers = capacity > LONGEST_TIER ? 2 : 1
  const perTier = Math.max(1, Math.ceil(capacity / tiers))
  const pitch = 300 / Math.max(perTier, 6)
  const width = Math.min(24, pitch * 0.72)
  const height = tiers === 1 ? 58 : 24
  return Array.from({ length: capacity }, (_, place) => ({
    place,
    x: 31 + (place % perTier) * pitch,
    y: tiers === 1 ? 58 : 50 + (tiers - 1 - Math.floor(place / perTier)) * 40,
    width,
    height,
  }))
}

function JarInWater({ x, y, width, height, produce }: Box & { produce: Produce }) {
  const lidHeight = height > 30 ? 8 : 5
  return (
    <>
      <rect x={x} y={y} width={width} height={height} rx="4" fill={produceFill(produce)} stroke={produceInk(produce)} strokeWidth="2.5" />
      <rect x={x + 2} y={y - lidHeight - 3} width={width - 4} height={lidHeight} className="jar-lid" />
    </>
  )
}

const FreePlace = ({ x, y, width, height }: Box) => <rect x={x} y={y} width={width} height={height} rx="4" className="free-place" />
