import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { JAR_SIZES, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { THREE_YEARS } from '@/shared/supplies/lid-age'

const KINDS = [
  { value: 'jar', label: 'Jars' },
  { value: 'band', label: 'Bands' },
  { value: 'lid', label: 'Flat lids, unused' },
]

const MOUTHS = [
  { value: 'regular', label: 'Regular' },
  { value: 'wide', label: 'Wide' },
]

/** Puts jars, bands or lids of one purchase into stock. */
export function AddStock({ groupId, owners }: { groupId: string; owners: readonly { value: string; label: string }[] }) {
  return (
    <Sheet lid="flat" lidWords="If there is more" title="Add to the stock">
      <CommandForm command="add-supply" groupId={groupId} formKey={freshKey()} next={`/g/${groupId}/stock`} className="form side">
        <SelectEntry name="kind" label="What" ask="Choose one" options={KINDS} required />
        <SelectEntry
          name="jarSize"
          label="Jars: size"
          ask="Not jars"
          options={JAR_SIZES.map((value) => ({ value, label: jarNameWithVolume(value) }))}
          required={false}
        />
        <SelectEntry name="mouth" label="Mouth" options={MOUTHS} first="regular" />
        <FieldEntry
          name="lotCode"
          label="Lot"
          hint="A short name for this purchase, so that it can be called back: LID-2027."
          required
          maxLength={40}
          short
        />
        <FieldEntry name="count" label="How many" type="number" inputMode="numeric" min={0} max={100000} required short />
        <FieldEntry
          name="boughtOn"
          label="Bought on"
          hint={`Lids older than ${THREE_YEARS.mostMonths / 12} years are not used.`}
          type="date"
          required={false}
          short
        />
        <SelectEntry name="householdId" label="Lent by" ask="The group’s own" options={owners} required={false} />
        <FieldEntry name="note" label="Note" required={false} maxLength={120} />
        <div className="full">
          <SubmitButton sending="Adding it">Add to the stock</SubmitButton>
        </div>
      </CommandForm>
    </Sheet>
  )
}
