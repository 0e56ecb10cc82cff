import { type Produce, produceInk } from '@/app/_drawings/produce'

/** Jars of one product, every one drawn and countable. */
export type JarCount = {
  produce: Produce
  yours: number
  others: number
  /** Likely jars that nobody has asked for yet. */
  free?: number
  /** How many of all these, the last ones, may not come about. */
  notSure?: number
}

const CELL = { width: 54, height: 82 }
const COLUMNS = 16

/** Yours filled, the others' empty, a short line where a jar is still free, dashed where it is not sure. */
export function JarField({ produce, yours, others, free = 0, notSure = 0 }: JarCount) {
  const total = yours + others + free
  const rows = Math.max(1, Math.ceil(total / COLUMNS))
  const words = jarFieldWords({ yours, others, free, notSure })
  return (
    <div className="jar-field">
      <svg viewBox={`0 0 ${COLUMNS * CELL.width} ${rows * CELL.height}`} role="img" aria-label={words.join(', ')}>
        {Array.from({ length: total }, (_, place) => place).map((place) => (
          <use
            key={place}
            href={`#sym-${placeSymbol(place, { yours, others, total, notSure })}`}
            x={(place % COLUMNS) * CELL.width + 3}
            y={Math.floor(place / COLUMNS) * CELL.height + 9}
            width="48"
            height="64"
            className={place < yours ? 'jar-mine' : 'jar-other'}
            color={place < yours ? produceInk(produce) : undefined}
          />
        ))}
      </svg>
      <JarKey produce={produce} yours={yours} others={others} free={free} notSure={notSure} />
    </div>
  )
}

function JarKey({ produce, yours, others, free = 0, notSure = 0 }: JarCount) {
  const [mine, rest, left] = jarFieldWords({ yours, others, free, notSure })
  return (
    <p className="jar-key" aria-hidden="true">
      <span>
        <KeyJar name="jar-full" color={produceInk(produce)} />
        {mine}
      </span>
      <span>
        <KeyJar name="jar" />
        {notSure > 0 && <KeyJar name="jar-gap" />}
        {rest}
      </span>
      {left && (
        <span>
          <KeyJar name="jar-place" />
          {left}
        </span>
      )}
    </p>
  )
}

const KeyJar = ({ name, color }: { name: string; color?: string }) => (
  <svg className="sym" viewBox="0 0 48 64" width="15" height="20" aria-hidden="true" color={color}>
    <use href={`#sym-${name}`} />
  </svg>
)

type Places = { yours: number; others: number; total: number; notSure: number }

function placeSymbol(place: number, { yours, others, total, notSure }: Places): string {
  if (place < yours) return 'jar-full'
  if (place >= total - notSure) return 'jar-gap'
  return place < yours + others ? 'jar' : 'jar-place'
}

/** "8 yours", "40 for others, 6 not sure", "4 free". */
function jarFieldWords({ yours, others, free = 0, notSure = 0 }: Omit<JarCount, 'produce'>): string[] {
  const rest = `${others} for others${notSure > 0 ? `, ${notSure} not sure` : ''}`
  return free > 0 ? [`${yours} yours`, rest, `${free} free`] : [`${yours} yours`, rest]
}
