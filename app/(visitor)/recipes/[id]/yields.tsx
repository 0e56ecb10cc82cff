import { JarRow } from '@/app/_drawings/jar-row'
import { Facts } from '@/app/_ui/facts'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { Recipe } from '@/shared/recipes/recipe'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { sayYield } from '@/shared/wording/say-recipe'

/** How many jars one batch gives: the printed range drawn, and the other sizes of the recipe by volume. */
export function Yields({ recipe }: { recipe: Recipe }) {
  const { batch, jars, pattern, process } = recipe
  const others = jars.filter((jar) => jar !== batch.jar)
  return (
    <Sheet lid="sunk" lidWords="Known" title="How many jars">
      <p className="recipe-yield">
        <JarRow produce={pattern} got={batch.yield.low} asked={batch.yield.high} />
        <span>
          <span className="num">{sayYield(batch.yield, batch.jar)}</span> a batch
        </span>
      </p>
      <Facts
        facts={[
          ...others.map((jar) => ({
            label: `In ${jarNameWithVolume(jar)}`,
            value: `${sayYield(yieldInJars(recipe, jar), jar)}, by volume`,
          })),
          ...(process ? [{ label: 'Pack', value: `${process.pack} pack` }] : []),
          { label: 'Jars the recipe names', value: jars.map(jarNameWithVolume).join('; ') },
        ]}
      />
      <Source>Yield as printed with the recipe; dashed jars come only with a good batch. Other sizes: same volume, whole jars.</Source>
    </Sheet>
  )
}
