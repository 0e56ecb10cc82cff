import { FieldEntry, RadioEntry, TextEntry } from '@/app/_forms/entries'
import type { KitchenFacts } from '@/lib/queries/kitchen-page'
import { formatClock } from '@/shared/time/kitchen-time'

const UNITS = [
  { value: 'ft', label: 'Feet' },
  { value: 'm', label: 'Metres' },
]

/** What is asked of a kitchen, new or known. The elevation starts empty: nobody's guess is offered. */
export function KitchenEntries({ first }: { first?: Omit<KitchenFacts, 'id' | 'seen'> }) {
  const count = { type: 'number', inputMode: 'numeric', short: true } as const
  return (
    <>
      <FieldEntry name="name" label="Name" first={first?.name} required maxLength={60} />
      <FieldEntry
        name="elevation"
        label="Elevation above sea level"
        hint="Process times and pressures hang on it. Not known? A survey map or the county office knows it; do not guess."
        inputMode="decimal"
        type="number"
        step="any"
        first={first?.elevationFeet}
        required
        short
      />
      <RadioEntry name="elevationUnit" label="Elevation is in" options={UNITS} first={first ? 'ft' : undefined} required across />
      <FieldEntry
        name="elevationSource"
        label="How that is known"
        hint="For example: survey map, county records, survey mark at the door."
        first={first?.elevationSource}
        required
        maxLength={120}
      />
      <FieldEntry name="opensAt" label="Open from" type="time" first={first && formatClock(first.opensAt)} required short />
      <FieldEntry
        name="closesAt"
        label="Open until"
        hint="A time before the opening is the next morning."
        type="time"
        first={first && formatClock(first.closesAt)}
        required
        short
      />
      <FieldEntry
        {...count}
        name="headcountLimit"
        label="People in it at most"
        min={1}
        max={2000}
        unit="people"
        first={first?.headcountLimit}
        required
      />
      <FieldEntry
        {...count}
        name="rackJars"
        label="Jars that can stand and cool"
        hint="1 in (25 mm) apart, undisturbed for 12 to 24 h."
        min={0}
        max={10000}
        unit="jars"
        first={first?.rackJars}
        required
      />
      <FieldEntry {...count} name="fridges" label="Fridges" min={0} max={100} first={first?.fridges ?? 0} />
      <FieldEntry {...count} name="sinks" label="Sinks" min={0} max={100} first={first?.sinks ?? 1} />
      <FieldEntry {...count} name="fillTables" label="Tables to fill at" min={1} max={100} first={first?.fillTables ?? 1} />
      <div className="full">
        <TextEntry
          name="notes"
          label="Notes"
          hint="Keys, parking, what the hall asks for."
          first={first?.notes}
          required={false}
          maxLength={500}
        />
      </div>
    </>
  )
}
