import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import type { ListedPledge } from '@/lib/queries/day-pledges'
import { productName } from '@/shared/day/product-name'
import { saySource } from '@/shared/wording/say-process'

type Props = { products: readonly OfferedProduct[]; pledges: readonly ListedPledge[]; seesAll: boolean; mayPromise: boolean }

/** Steps that must be done at home before the day, and who promised them. */
export function HomeTasks({ products, pledges, seesAll, mayPromise }: Props) {
  const steps = products.flatMap(({ id, recipe }) => recipe.leadSteps.map((step) => ({ id: `${id} ${step.label}`, recipe, step })))
  if (steps.length === 0) return null
  const hostsOf = (label: string) =>
    pledges.filter(({ kind, item }) => kind === 'home-task' && item.toLowerCase() === label.toLowerCase()).map(({ household }) => household)
  const isOpen = seesAll && steps.some(({ step }) => hostsOf(step.label).length === 0)
  return (
    <Sheet lid={isOpen ? 'domed' : 'sunk'} title="At home, before the day">
      <ul className="list">
        {steps.map(({ id, recipe, step }) => {
          const hosts = hostsOf(step.label)
          return (
            <li key={id}>
              <b>{step.label}</b> for {productName(recipe.title)}: {step.hours} h, {step.where}.{' '}
              {hosts.length > 0 ? `Promised by ${hosts.join(', ')}.` : 'Nobody you can see has promised it yet.'}{' '}
              {recipe.allergens.length > 0 && `Contains ${recipe.allergens.join(', ')}. `}
              {mayPromise && (
                <a className="tall" href={`?kind=home-task&item=${encodeURIComponent(step.label)}#promise`}>
                  Promise it
                </a>
              )}
              <Source>
                {productName(recipe.title)}: {saySource(recipe.source)}.
              </Source>
            </li>
          )
        })}
      </ul>
    </Sheet>
  )
}
