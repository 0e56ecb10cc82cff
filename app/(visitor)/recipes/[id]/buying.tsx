import { Facts } from '@/app/_ui/facts'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { type CannerLoadWeight, loadWeightsOf } from '@/shared/recipes/canner-load-weights'
import type { Recipe } from '@/shared/recipes/recipe'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { saySource } from '@/shared/wording/say-process'

/** How much produce to bring: for a batch, for a full canner, and what a bushel gives, where printed. */
export function Buying({ recipe: { batch, process } }: { recipe: Recipe }) {
  const weights = process ? loadWeightsOf(process.foodId) : undefined
  if (batch.producePounds === null && weights === undefined) return null
  return (
    <Sheet lid="sunk" lidWords="Known" title="How much to bring">
      <Facts
        facts={[
          ...(batch.producePounds === null
            ? []
            : [{ label: 'One batch', value: `${sayKitchenAmount(batch.producePounds, 'lb')} of ${batch.produce}` }]),
          ...(weights ? printedWeights(weights) : []),
        ]}
      />
      {weights?.notes?.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {weights && <Source what={`Weights for ${weights.food.toLowerCase()}`} publication={saySource(weights.source)} />}
    </Sheet>
  )
}

function printedWeights({ poundsPer7Quarts, poundsPer9Pints, poundsPerJar, fieldUnit }: CannerLoadWeight) {
  const pounds = (amount: number) => sayKitchenAmount(amount, 'lb')
  return [
    ...(poundsPer7Quarts === null ? [] : [{ label: 'Canner of 7 quarts', value: pounds(poundsPer7Quarts) }]),
    ...(poundsPer9Pints === null ? [] : [{ label: 'Canner of 9 pints', value: pounds(poundsPer9Pints) }]),
    ...(poundsPerJar === null ? [] : [{ label: `One ${jarName(poundsPerJar.jar)}, on average`, value: pounds(poundsPerJar.pounds) }]),
    ...(fieldUnit === null
      ? []
      : [
          {
            label: `One ${fieldUnit.name}, ${pounds(fieldUnit.pounds)}`,
            value: `${fieldUnit.yields.low} to ${fieldUnit.yields.high} ${jarName(fieldUnit.yields.jar, 2)}`,
          },
        ]),
  ]
}
