import { type SisterJar, SisterJars, type SisterState } from '@/app/_drawings/sister-jars'
import { Sheet } from '@/app/_ui/sheet'
import type { JarTrace } from '@/lib/queries/jar-trace'
import type { JarState } from '@/shared/lifecycle/jar-states'
import { jarStateWords } from '@/shared/trace/jar-words'

/** The jars of the same lot and, for those who may see it, who holds them. */
export function SistersOfJar({ jar, groupId, seesNames }: { jar: JarTrace; groupId: string; seesNames: boolean }) {
  const sisters: SisterJar[] = jar.sisters.map(({ serial, shortName, state }) => ({
    id: serial,
    label: shortName.split('-').at(-1) ?? shortName,
    state: drawnAs(state),
    isThis: serial === jar.serial,
    href: seesNames && serial !== jar.serial ? `/g/${groupId}/jars/${serial}` : undefined,
  }))
  return (
    <Sheet lid="sunk" lidWords="Same lot" title={`${jar.sisters.length} ${jar.sisters.length === 1 ? 'jar' : 'jars'} of this lot`}>
      <SisterJars jars={sisters} />
      {seesNames ? <p>{holders(jar)}</p> : <p>{sayStates(jar)} Ask the organiser who holds the others.</p>}
      {jar.lotNumber && (
        <p className="src">
          Lot <span className="num">{jar.lotNumber}</span>
        </p>
      )}
    </Sheet>
  )
}

function drawnAs(state: string): SisterState {
  switch (state) {
    case 'held':
      return 'tied'
    case 'recalled':
      return 'recalled'
    case 'unsealed':
      return 'bad'
    case 'discarded':
    case 'broken':
    case 'opened':
      return 'gone'
    default:
      return 'full'
  }
}

/** "7 sealed, 1 not sealed." */
function sayStates({ sisters }: JarTrace): string {
  const by = new Map<string, number>()
  for (const { state } of sisters) by.set(jarStateWords(state as JarState), (by.get(jarStateWords(state as JarState)) ?? 0) + 1)
  return `${[...by].map(([words, jars]) => `${jars} ${words}`).join(', ')}.`
}

/** "Alderby 3: 02, 03, 04. Brightwater 2: 07, 08. In the store 1: 09." */
function holders({ sisters }: JarTrace): string {
  const by = new Map<string, string[]>()
  for (const { household, state, shortName } of sisters) {
    const place = state === 'unsealed' ? 'Not sealed' : state === 'broken' || state === 'discarded' ? 'Gone' : (household ?? 'In the store')
    by.set(place, [...(by.get(place) ?? []), shortName.split('-').at(-1) ?? shortName])
  }
  return [...by].map(([place, jars]) => `${place} ${jars.length}: ${jars.join(', ')}.`).join(' ')
}
