import { stillHere } from '@/shared/people/still-here'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ReckoningPage } from '@/lib/queries/reckoning'
import { productName } from '@/shared/day/product-name'
import { COMMON_POOL } from '@/shared/share/pool-products'

interface AddReceiptProps {
  readonly page: ReckoningPage
  readonly groupId: string
  readonly dayId: string
}

/** Who paid for what, and which jars carry it. */
export function AddReceipt({ page: { products, households, currency }, groupId, dayId }: AddReceiptProps) {
  const pools = [
    { value: COMMON_POOL, label: 'every jar of the day' },
    ...products.map(({ recipeId, title }) => ({ value: recipeId, label: `jars of ${productName(title).toLowerCase()}` })),
  ]
  return (
    <Sheet lid="domed" lidWords="To fill in" title="A receipt">
      <CommandForm
        command="add-purchase"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/days/${dayId}/reckoning`}
        fixed={{ dayId }}
        className="form"
      >
        <FieldEntry name="item" label="What was bought?" maxLength={80} />
        <FieldEntry name="packs" label="How many packs?" type="number" inputMode="decimal" step="0.001" min="0.001" first={1} short />
        <FieldEntry name="pack" label="What is one pack?" hint="4 lb bag, box of 12, evening" maxLength={40} />
        <FieldEntry name="cost" label="What did it cost together?" inputMode="decimal" unit={currency} maxLength={20} short />
        <SelectEntry
          name="householdId"
          label="Who paid?"
          ask="choose"
          options={stillHere(households).map(({ id, name }) => ({ value: id, label: name }))}
        />
        <SelectEntry name="pool" label="Who carries it?" first={COMMON_POOL} options={pools} />
        <SubmitButton sending="Saving">Add the receipt</SubmitButton>
      </CommandForm>
    </Sheet>
  )
}
