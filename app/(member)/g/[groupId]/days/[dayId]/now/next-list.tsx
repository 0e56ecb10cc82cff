import Link from 'next/link'
import { Sheet } from '@/app/_ui/sheet'
import type { FloorNow } from '@/lib/queries/floor-now'
import { productName } from '@/shared/day/product-name'
import { recipeById } from '@/shared/recipes/recipe-library'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayBatches } from '@/shared/wording/say-load'

/** What comes next at each kettle and each canner, by the plan. */
export function NextList({ floor, path }: { floor: FloorNow; path: string }) {
  const batches = firstOf(
    floor.batches.filter(({ state }) => state === 'planned' || state === 'prepping'),
    ({ kettle }) => kettle ?? 'Any kettle',
  )
  const loads = firstOf(
    floor.loads.filter(({ state }) => state === 'planned'),
    ({ canner }) => canner,
  )
  if (batches.length + loads.length === 0) return null
  return (
    <Sheet lid="flat" lidWords="To come" title="Next">
      <ul className="list">
        {batches.map(([station, batch]) => (
          <li key={batch.id}>
            <Link className="way" href={`${path}/now/batches/${batch.id}`} prefetch={false}>
              <span>
                <b className="num">{formatClock(batch.plannedStart)}</b> {station}: {productName(recipeById(batch.recipeId)?.title ?? '')},
                start <b>{batch.code}</b>
              </span>
            </Link>
          </li>
        ))}
        {loads.map(([station, load]) => {
          const planned = floor.planned.get(load.code) ?? []
          return (
            <li key={load.id}>
              <Link className="way" href={`${path}/now/loads/${load.id}`} prefetch={false}>
                <span>
                  <b className="num">{formatClock(load.plannedLoadAt)}</b> {station}: load <b>{load.code}</b>
                  {planned.length > 0 && `, ${sayBatches(planned)}`}
                </span>
              </Link>
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}

/** The first thing at each station, in the order given. */
function firstOf<Thing>(things: readonly Thing[], station: (thing: Thing) => string): (readonly [string, Thing])[] {
  const first = new Map<string, Thing>()
  for (const thing of things) if (!first.has(station(thing))) first.set(station(thing), thing)
  return [...first]
}
