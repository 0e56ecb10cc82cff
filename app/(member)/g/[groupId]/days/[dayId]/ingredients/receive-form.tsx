import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayIngredients } from '@/lib/queries/day-ingredients'

interface ReceiveFormProps {
  readonly groupId: string
  readonly dayId: string
  readonly date: string
  readonly page: DayIngredients
}

/** What was bought, or brought without a promise. */
export function ReceiveForm({ groupId, dayId, date, page: { households } }: ReceiveFormProps) {
  return (
    <Sheet lid="domed" lidWords="To fill in" title="Something else came in">
      <CommandForm
        command="receive-ingredients"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/days/${dayId}/ingredients`}
        fixed={{ dayId }}
        className="form side"
      >
        <FieldEntry name="item" label="What?" maxLength={80} />
        <FieldEntry name="quantity" label="How much?" type="number" inputMode="decimal" step="0.001" min="0.001" short />
        <FieldEntry name="unit" label="Unit" hint="lb, qt, bag" maxLength={20} short />
        <FieldEntry
          name="culled"
          label="Of that, sorted out"
          hint="In the same unit. Only the rest makes jars."
          type="number"
          inputMode="decimal"
          step="0.001"
          min="0"
          required={false}
          short
        />
        <SelectEntry
          name="householdId"
          label="Brought by"
          required={false}
          ask="nobody: it was bought"
          options={households.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <FieldEntry name="source" label="Bought from" hint="The shop or the field." maxLength={120} required={false} />
        <FieldEntry name="receivedOn" label="Picked or bought on" type="date" max={date} first={date} short />
        <FieldEntry name="condition" label="How did it look?" maxLength={200} required={false} />
        <FieldEntry name="allergens" label="It contains" hint="Allergens on the packet, with commas between." required={false} />
        <div className="full">
          <SubmitButton sending="Saving">Write it down</SubmitButton>
        </div>
      </CommandForm>
    </Sheet>
  )
}
