import { stillHere } from '@/shared/people/still-here'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ReckoningPage } from '@/lib/queries/reckoning'
import { EQUIPMENT_YEARS, equipmentCharge } from '@/shared/reckoning/equipment-charge'
import { nameOf } from './payments'

interface EquipmentProps {
  readonly page: ReckoningPage
  readonly groupId: string
  readonly dayId: string
  readonly money: (minor: number) => string
}

/** What canners, jars and burners cost a day: their price over their life. For the organiser. */
export function Equipment({ page, groupId, dayId, money }: EquipmentProps) {
  const { equipment, households, currency } = page
  const place = () => ({ groupId, formKey: freshKey(), next: `/g/${groupId}/days/${dayId}/reckoning` })
  return (
    <Sheet lid="flat" lidWords="If the group counts it" title="Equipment over its life">
      <ul className="list">
        {equipment.map(({ id, name, priceMinor, years, daysAYear, householdId, charge }) => (
          <li key={id} className="row apart">
            <span>
              <b>{name}</b>, {nameOf(page, householdId)}: {money(charge ?? equipmentCharge(priceMinor, years, daysAYear))} a day
              <br />
              <span className="quiet">
                {money(priceMinor)} over {years} years of {daysAYear} {daysAYear === 1 ? 'day' : 'days'}
              </span>
            </span>
            <CommandForm
              command={charge === null ? 'charge-equipment' : 'uncharge-equipment'}
              {...place()}
              fixed={{ dayId, equipmentId: id }}
            >
              <SubmitButton small kind="plain" sending="Saving">
                {charge === null ? 'Used today' : 'Not used today'}
                <span className="unseen">: {name}</span>
              </SubmitButton>
            </CommandForm>
          </li>
        ))}
      </ul>
      <Fold summary="Add a piece of equipment">
        <CommandForm command="add-equipment" {...place()} className="form side">
          <FieldEntry name="name" label="What" maxLength={60} required />
          <FieldEntry name="price" label="It cost" inputMode="decimal" unit={currency} required short />
          <FieldEntry
            name="years"
            label="It lasts"
            hint={`Jars ${EQUIPMENT_YEARS.jars} years, canners ${EQUIPMENT_YEARS.canner}.`}
            inputMode="numeric"
            unit="years"
            first={EQUIPMENT_YEARS.canner}
            required
            short
          />
          <FieldEntry name="daysAYear" label="Used on" inputMode="numeric" unit="days a year" required short />
          <SelectEntry
            name="householdId"
            label="Whose"
            ask="choose"
            options={stillHere(households).map(({ id, name }) => ({ value: id, label: name }))}
            required
          />
          <div className="full">
            <SubmitButton kind="plain" sending="Adding it">
              Add it
            </SubmitButton>
          </div>
        </CommandForm>
      </Fold>
      <p className="src">Years: New Mexico State University, home canning cost worksheet.</p>
    </Sheet>
  )
}
