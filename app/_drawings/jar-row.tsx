import { type Produce, produceInk } from '@/app/_drawings/produce'

/** Jars got, filled; jars hoped for and not got, dashed. The number stands beside it, so the drawing is silent. */
export function JarRow({ produce, got, asked = got }: { produce: Produce; got: number; asked?: number }) {
  const total = Math.max(got, asked)
  return (
    <svg
      className="jar-row"
      viewBox={`0 0 ${Math.max(1, total) * 54} 64`}
      width={Math.max(1, total) * 27}
      height="32"
      aria-hidden="true"
      color={produceInk(produce)}
    >
      {Array.from({ length: total }, (_, place) => place).map((place) => (
        <use key={place} href={place < got ? '#sym-jar-full' : '#sym-jar-gap'} x={place * 54 + 3} width="48" height="64" />
      ))}
    </svg>
  )
}
