import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import { Table } from '@/app/_ui/table'
import type { Ingredient, Recipe } from '@/shared/recipes/recipe'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { saySource } from '@/shared/wording/say-process'
import { sayScaling } from '@/shared/wording/say-recipe'

/** The quantities of one tested batch, as published and in the other system, and the rule for making more. */
export function Ingredients({ recipe }: { recipe: Recipe }) {
  const { ingredients, ingredientList, source, notes } = recipe
  const isPartial = ingredientList === 'key-only'
  return (
    <Sheet lid={isPartial ? 'domed' : 'sunk'} lidWords={isPartial ? 'Read the full recipe' : 'From a publication'} title="One batch">
      {isPartial && (
        <Notice
          what="Key ingredients only: read the full recipe."
          why="The publication was read in part; spices and steps may be missing here."
          instead="Take the full recipe from the publication below before you buy or cook."
        />
      )}
      <Table
        caption="Quantities for one batch"
        captionHidden
        columns={[
          { key: 'item', head: 'Ingredient' },
          { key: 'amount', head: 'Quantity' },
        ]}
        rows={ingredients.map((each) => ({ id: each.item, cells: { item: each.item, amount: sayIngredient(each) } }))}
      />
      <p>
        <b>More jars?</b> {sayScaling(recipe)}
      </p>
      {notes.length > 0 && (
        <ul className="list">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <Source publication={saySource(source)}>. Cups, pints, quarts and spoons are US measures; metric is rounded.</Source>
    </Sheet>
  )
}

function sayIngredient({ amount, unit, per, optional }: Ingredient): string {
  const each = per === undefined ? '' : ` for each ${per}`
  return `${sayKitchenAmount(amount, unit)}${each}${optional ? ', if you like' : ''}`
}
