import { Field } from '@/app/_ui/field'
import { RadioSet } from '@/app/_ui/radio-set'
import type { FinderRead } from '@/shared/finder/read-finder'

const UNITS = [
  { value: 'ft', label: 'feet' },
  { value: 'm', label: 'metres' },
]

/** How high the kitchen stands, in feet or metres. It has no default: nobody guesses it. */
export function ElevationEntry({ typed, errors }: Partial<Pick<FinderRead, 'typed' | 'errors'>>) {
  return (
    <div className="elevation-entry">
      <Field
        name="elevation"
        label="Elevation of the kitchen"
        hint="From a map, or from the county extension office."
        typed={typed?.elevation}
        errors={errors?.elevation}
        inputMode="decimal"
        autoComplete="off"
        maxLength={12}
        short
      />
      <RadioSet name="unit" label="In" options={UNITS} typed={typed?.unit || 'ft'} errors={errors?.unit} />
    </div>
  )
}
