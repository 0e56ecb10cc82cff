import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { JAR_SIZES, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { MOVEMENT_KINDS } from '@/shared/supplies/jar-ledger'
import { MOVEMENT_WORDS } from '@/shared/wording/say-ledger'

const MOUTHS = [
  { value: 'regular', label: 'Regular' },
  { value: 'wide', label: 'Wide' },
]

/** Jars that moved outside of a hand-over: lent, given back, brought back, broken. */
export function NoteJarsForm({ groupId, households }: { groupId: string; households: readonly { id: string; name: string }[] }) {
  return (
    <Sheet lid="flat" lidWords="To fill in" title="Jars that moved">
      <CommandForm command="note-jars" groupId={groupId} formKey={freshKey()} next={`/g/${groupId}/ledger`} className="form side">
        <SelectEntry
          name="householdId"
          label="Household"
          ask="Choose one"
          options={households.map(({ id, name }) => ({ value: id, label: name }))}
          required
        />
        <SelectEntry
          name="kind"
          label="What happened"
          options={MOVEMENT_KINDS.map((value) => ({ value, label: MOVEMENT_WORDS[value].ask }))}
          first="came-back-empty"
        />
        <FieldEntry name="jars" label="How many" type="number" inputMode="numeric" min={1} max={10000} required short />
        <SelectEntry
          name="jarSize"
          label="Size"
          ask="Choose one"
          options={JAR_SIZES.map((value) => ({ value, label: jarNameWithVolume(value) }))}
          required
        />
        <SelectEntry name="mouth" label="Mouth" options={MOUTHS} first="regular" />
        <FieldEntry name="movedOn" label="On" hint="Left empty: today." type="date" required={false} short />
        <FieldEntry name="note" label="Note" required={false} maxLength={120} />
        <div className="full">
          <SubmitButton sending="Saving">Write it down</SubmitButton>
        </div>
      </CommandForm>
    </Sheet>
  )
}
