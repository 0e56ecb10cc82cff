import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { LANGUAGES, languageName } from '@/shared/people/languages'

interface HouseholdEntriesProps {
  readonly first?: {
    readonly name: string
    readonly headcount: number
    readonly language: string
    readonly contact: string
    readonly allergens: readonly string[]
  }
}

/** What is asked of a household, new or known. */
export function HouseholdEntries({ first }: HouseholdEntriesProps) {
  return (
    <>
      <FieldEntry name="name" label="Name" first={first?.name} required maxLength={60} />
      <FieldEntry
        name="headcount"
        label="People in it"
        type="number"
        inputMode="numeric"
        min={1}
        max={50}
        first={first?.headcount}
        unit="people"
        required
        short
      />
      <SelectEntry
        name="language"
        label="Language for labels and notes"
        options={LANGUAGES.map((value) => ({ value, label: languageName(value) }))}
        first={first?.language ?? 'en'}
      />
      <FieldEntry
        name="contact"
        label="Contact"
        hint="How the group reaches it the same hour, for instance when a jar is called back."
        first={first?.contact}
        required={false}
        maxLength={120}
      />
      <FieldEntry
        name="allergens"
        label="Does not eat"
        hint="Allergens, with commas between them: mustard, celery. Jars that contain one are never offered to this household."
        first={first?.allergens.join(', ')}
        required={false}
      />
    </>
  )
}
