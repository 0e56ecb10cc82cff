import { type Produce, produceInk } from '@/app/_drawings/produce'

const LONGEST_ROW = 16

/** Jars got, filled; jars hoped for and not got, dashed. The number stands beside it, so the drawing is silent. */
export function JarRow({ produce, got, asked = got }: { produce: Produce; got: number; asked?: number }) {
  const total = Math.max(got, asked)
  const columns = Math.max(1, Math.min(total, LONGEST_ROW))
  const rows = Math.max(1, Math.ceil(total / LONGEST_ROW))
  return (
    <svg
      className="jar-row"
      viewBox={`0 0 ${columns * 54} ${rows * 68}`}
      width={columns * 27}
      height={rows * 34}
      aria-hidden="true"
      color={produceInk(produce)}
    >
      {Array.from({ length: total }, (_, place) => place).map((place) => (
        <use
          key={place}
          href={place < got ? '#sym-jar-full' : '#sym-jar-gap'}
          x={(place % LONGEST_ROW) * 54 + 3}
          y={Math.floor(place / LONGEST_ROW) * 68 + 2}
          width="48"
          height="64"
        />
      ))}
    </svg>
  )
}
