import { Sheet } from '@/app/_ui/sheet'
import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'

interface Line {
  readonly name: string
  readonly size: JarSize
  readonly words: string
  readonly difference: number
}

const NAMES: Readonly<Record<string, string>> = {
  'empty-jars': 'Empty jars',
  'after-the-canner': 'After the canner',
  'unsealed-jars': 'Not sealed',
  'sealed-jars': 'Sealed',
  lids: 'Lids',
  bands: 'Bands',
}

/** The sums of the day, size by size, each as it can be read aloud; what does not add up comes first. */
export function BalanceSheets({
  lines,
  differences,
  isClosed,
}: {
  lines: readonly Line[]
  differences: readonly string[]
  isClosed: boolean
}) {
  const jars = lines.filter(({ name }) => name !== 'lids' && name !== 'bands')
  const sizes = [...new Set(jars.map(({ size }) => size))]
  return (
    <div className="stack">
      {differences.length > 0 && (
        <Sheet lid="domed" title="This does not add up">
          <ul className="list">
            {differences.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Sheet>
      )}
      {sizes.map((size) => (
        <Sums key={size} title={capital(jarName(size, 2))} lines={jars.filter((line) => line.size === size)} isClosed={isClosed} />
      ))}
      <Sums title="Lids and bands" lines={lines.filter(({ name }) => name === 'lids' || name === 'bands')} isClosed={isClosed} />
    </div>
  )
}

function Sums({ title, lines, isClosed }: { title: string; lines: readonly Line[]; isClosed: boolean }) {
  const isEven = lines.every(({ difference }) => difference === 0)
  return (
    <Sheet
      lid={isEven ? (isClosed ? 'sunk' : 'flat') : 'domed'}
      lidWords={isEven ? (isClosed ? 'Adds up' : 'Not closed yet') : 'Does not add up'}
      title={title}
    >
      <ul className="list">
        {lines.map(({ name, words }) => (
          <li key={name}>
            <b>{NAMES[name] ?? name}</b>: {words}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
