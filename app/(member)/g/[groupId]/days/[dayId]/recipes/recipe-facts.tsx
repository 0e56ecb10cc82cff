import { Facts } from '@/app/_ui/facts'
import { Source } from '@/app/_ui/source'
import { jarName } from '@/shared/kitchen/jar-sizes'
import type { Recipe } from '@/shared/recipes/recipe'

/** What one has to know of a recipe before choosing it. */
export function RecipeFacts({ recipe }: { recipe: Recipe }) {
  const { low, high } = recipe.batch.yield
  const facts = [
    { label: 'One batch gives', value: `${low === high ? low : `${low} to ${high}`} ${jarName(recipe.batch.jar, high)}` },
    {
      label: 'How it grows',
      value:
        recipe.scaling === 'whole-batches-only' ? 'Whole batches, one to a kettle, never doubled' : 'Fills the kettle in whole batches',
    },
    { label: 'Contains', value: allergenWords(recipe) },
    ...recipe.leadSteps.map((step) => ({ label: step.label, value: `${step.hours} h before, ${step.where}` })),
  ]
  return (
    <>
      <h3>{recipe.title}</h3>
      <Facts facts={facts} />
      {recipe.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <Source what="Recipe" publication={recipe.source.publication} part={`${recipe.source.edition}, ${recipe.source.section}`} />
    </>
  )
}

/** A list that was read only in part is no proof that an allergen is absent. */
function allergenWords({ allergens, ingredientList }: Recipe): string {
  const named = allergens.length > 0 ? allergens.join(', ') : 'no allergen on its list'
  return ingredientList === 'complete' ? named : `${named}; only the main ingredients are held here: read the full recipe for allergens`
}
