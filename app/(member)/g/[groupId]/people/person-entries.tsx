import { CheckboxListEntry, FieldEntry, RadioEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { LIMITS, limitName, SKILLS, skillName, TRAINED_SKILLS } from '@/shared/kitchen/skills'
import { LANGUAGES, languageName } from '@/shared/people/languages'
import { formatClock } from '@/shared/time/kitchen-time'

interface FirstPerson {
  readonly name: string
  readonly ageClass: string
  readonly skills: readonly string[]
  readonly limits: readonly string[]
  readonly allergies: readonly string[]
  readonly languages: readonly string[]
  readonly availableFrom: number | null
  readonly availableUntil: number | null
}

const AGES = [
  { value: 'adult', label: 'Adult' },
  { value: 'teen', label: '14 to 17' },
  { value: 'child', label: 'Under 14', hint: 'Never planned at burners, knives or canners.' },
]

const clock = (minutes: number | null | undefined) => (minutes === null || minutes === undefined ? undefined : formatClock(minutes))

/** What is asked of a person. Training is shown only to those who may enter it; for the others it is sent along as it was. */
export function PersonEntries({ first, training }: { first?: FirstPerson; training: boolean }) {
  const isTrained = (skill: string) => TRAINED_SKILLS.some((trained) => trained === skill)
  const kept = training ? [] : (first?.skills ?? []).filter(isTrained)
  const spoken = (first?.languages ?? []).map(languageName)
  const offered = SKILLS.filter((skill) => training || !isTrained(skill))
  return (
    <>
      <FieldEntry name="name" label="Name" first={first?.name} required maxLength={80} />
      <RadioEntry name="ageClass" label="Age" options={AGES} first={first?.ageClass ?? 'adult'} across />
      {kept.map((skill) => (
        <input key={skill} type="hidden" name="skills[]" value={skill} />
      ))}
      {kept.length > 0 && <p className="quiet">Trained, as the organiser entered it: {kept.map(skillName).join(', ')}.</p>}
      <CheckboxListEntry
        name="skills"
        legend="Can do"
        options={offered.map((value) => ({ value, label: skillName(value) }))}
        first={first?.skills}
        across
      />
      <CheckboxListEntry
        name="limits"
        legend="Please mind"
        options={LIMITS.map((value) => ({ value, label: limitName(value) }))}
        first={first?.limits}
        across
      />
      <FieldEntry
        name="allergies"
        label="Allergies"
        hint="With commas between them. The person is kept off stations with these."
        first={first?.allergies.join(', ')}
        required={false}
      />
      <Fold summary={spoken.length > 0 ? `Speaks ${spoken.join(', ')}` : 'Speaks'}>
        <CheckboxListEntry
          name="languages"
          legend="Speaks"
          options={LANGUAGES.map((value) => ({ value, label: languageName(value) }))}
          first={first?.languages}
          across
        />
      </Fold>
      <FieldEntry
        name="availableFrom"
        label="Usually from"
        hint="On the kitchen’s clock."
        type="time"
        first={clock(first?.availableFrom)}
        required={false}
        short
      />
      <FieldEntry name="availableUntil" label="Usually until" type="time" first={clock(first?.availableUntil)} required={false} short />
    </>
  )
}
