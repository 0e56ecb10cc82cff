import { CommandForm } from '@/app/_forms/command-form'
import { RadioEntry, SelectEntry } from '@/app/_forms/entries'
import { EmptyState } from '@/app/_ui/empty-state'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { KitchenChoice } from '@/lib/queries/kitchen-choices'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { FOODS } from '@/shared/process/food-names'
import type { OwnRecipe } from '@/shared/recipes/own-recipe-content'
import { type RecipePlace, recipePath } from './place'

type Props = { own: OwnRecipe; kitchens: readonly KitchenChoice[]; place: RecipePlace }

/** Which published table the recipe borrows its minutes from. */
export function ChooseTable({ own, kitchens, place }: Props) {
  const { binding } = own
  if (kitchens.length === 0)
    return (
      <Sheet lid="domed" title="A published process">
        <EmptyState
          text="Enter the kitchen first: its elevation decides every process time."
          action={<LinkButton href={`/g/${place.groupId}/kitchens`}>Kitchens</LinkButton>}
        />
      </Sheet>
    )
  if (!binding)
    return (
      <Sheet lid="domed" title="A published process">
        <p>Only if this is the very food of the table, prepared and packed as it says. Otherwise leave it fridge or freezer.</p>
        <TableForm {...{ own, kitchens, place }} />
      </Sheet>
    )
  return (
    <Sheet lid="sunk" lidWords="Chosen" title={`Table: ${FOODS.get(binding.foodId)?.name ?? binding.foodId}`}>
      <Fold summary="Choose another table">
        <p>What was confirmed of this one is then no longer confirmed.</p>
        <TableForm {...{ own, kitchens, place }} />
      </Fold>
    </Sheet>
  )
}

function TableForm({ own: { binding, content }, kitchens, place }: Props) {
  return (
    <CommandForm
      command="bind-own-recipe"
      groupId={place.groupId}
      formKey={freshKey()}
      next={recipePath(place)}
      fixed={{ recipeId: place.recipeId, version: place.version }}
      className="form"
    >
      <SelectEntry name="foodId" label="Food of the table" required ask="Choose a food" options={FOOD_CHOICES} first={binding?.foodId} />
      <RadioEntry
        name="canner"
        label="Canner"
        hint={`The recipe is a ${content.pack} pack.`}
        required
        options={CANNERS}
        first={binding ? (binding.gauge ? `pressure-${binding.gauge}` : binding.method) : 'boiling-water'}
      />
      <SelectEntry
        name="kitchenId"
        label="Read it for"
        required
        options={kitchens.map(({ id, name, elevationFeet }) => ({ value: id, label: `${name}, ${sayElevation(elevationFeet)}` }))}
        first={kitchens[0]?.id}
      />
      <SubmitButton sending="Looking it up">Choose this table</SubmitButton>
    </CommandForm>
  )
}

const FOOD_CHOICES = [...FOODS.values()]
  .map(({ id, name }) => ({ value: id, label: name }))
  .sort((a, b) => a.label.localeCompare(b.label, 'en'))

const CANNERS = [
  { value: 'boiling-water', label: 'Boiling-water canner' },
  { value: 'atmospheric-steam', label: 'Steam canner' },
  { value: 'pressure-dial', label: 'Pressure canner, dial gauge' },
  { value: 'pressure-weighted', label: 'Pressure canner, weighted gauge' },
]
