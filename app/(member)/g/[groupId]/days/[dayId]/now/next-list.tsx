import Link from 'next/link'
import { Sheet } from '@/app/_ui/sheet'
import type { FloorNow } from '@/lib/queries/floor-now'
import { productName } from '@/shared/day/product-name'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayBatches } from '@/shared/wording/say-load'

/** What comes next at each kettle and each canner, by the plan, the earliest first. */
export function NextList({ floor, path }: { floor: FloorNow; path: string }) {
  const batches = firstOf(
    floor.batches.filter(({ state }) => state === 'planned' || state === 'prepping'),
    ({ kettle }) => kettle ?? 'Any kettle',
  )
  const loads = firstOf(
    floor.loads.filter(({ state }) => state === 'planned'),
    ({ canner }) => canner,
  )
  const next = [
    ...batches.map(([station, batch]) => ({
      ...{ id: batch.id, at: batch.plannedStart, href: `${path}/now/batches/${batch.id}` },
      words: (
        <>
          {station}: {productName(batch.recipe.title)}, start <b>{batch.code}</b>
        </>
      ),
    })),
    ...loads.map(([station, load]) => ({
      ...{ id: load.id, at: load.plannedLoadAt, href: `${path}/now/loads/${load.id}` },
      words: (
        <>
          {station}: load <b>{load.code}</b>
          {sayWhat(floor.planned.get(load.code) ?? [])}
        </>
      ),
    })),
  ].sort((a, b) => a.at - b.at)
  if (next.length === 0) return null
  return (
    <Sheet lid="flat" lidWords="To come" title="Next">
      <ul className="list">
        {next.map(({ id, at, href, words }) => (
          <li key={id}>
            <Link className="way" href={href} prefetch={false}>
              <span>
                <b className="num">{formatClock(at)}</b> {words}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

const sayWhat = (batches: readonly string[]) => (batches.length > 0 ? `, ${sayBatches(batches)}` : '')

/** The first thing at each station, in the order given. */
function firstOf<Thing>(things: readonly Thing[], station: (thing: Thing) => string): (readonly [string, Thing])[] {
  const first = new Map<string, Thing>()
  for (const thing of things) if (!first.has(station(thing))) first.set(station(thing), thing)
  return [...first]
}
