import { Button } from '@/app/_ui/button'
import { Field } from '@/app/_ui/field'
import { Fold } from '@/app/_ui/fold'
import { RadioSet } from '@/app/_ui/radio-set'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { type InstrumentCheck, PRESSURE_UNITS } from '@/shared/forms/instrument-check'
import { UNITS } from '@/shared/units/units'

type Said = {
  typed: Readonly<Partial<Record<keyof InstrumentCheck, string>>>
  errors: Readonly<Partial<Record<keyof InstrumentCheck, readonly string[]>>>
}

/** What the operator reads off: a thermometer in ice water and in boiling water, and the air pressure where it is known. */
export function CheckForm({ typed, errors }: Said) {
  return (
    <Sheet lid="flat" lidWords="Not checked yet" title="Check a thermometer">
      <ol className="list check-how">
        <li>Crushed ice with a little water, stirred: wait until it stands still.</li>
        <li>Water at a full boil, the bulb off the bottom: wait until it stands still.</li>
      </ol>
      <form className="form" method="get">
        <div className="check-pair">
          <Field name="ice" label="In ice water" typed={typed.ice} errors={errors.ice} inputMode="text" autoComplete="off" maxLength={9} />
          <Field
            name="boil"
            label="In boiling water"
            typed={typed.boil}
            errors={errors.boil}
            inputMode="decimal"
            autoComplete="off"
            maxLength={9}
          />
        </div>
        <RadioSet name="degrees" label="Degrees" options={DEGREES} typed={typed.degrees || 'F'} errors={errors.degrees} across />
        <Fold
          summary="A barometer at hand?"
          open={Boolean(typed.pressure) || errors.pressure !== undefined || errors.reading !== undefined}
        >
          <div className="form">
            <Field
              name="pressure"
              label="Air pressure now"
              typed={typed.pressure}
              errors={errors.pressure}
              inputMode="decimal"
              autoComplete="off"
              maxLength={9}
              short
            />
            <Select name="pressureUnit" label="Unit" options={PRESSURES} typed={typed.pressureUnit || 'hPa'} errors={errors.pressureUnit} />
            <RadioSet name="reading" label="It is" options={READINGS} typed={typed.reading || 'here'} errors={errors.reading} />
          </div>
        </Fold>
        <Button>Check it</Button>
      </form>
    </Sheet>
  )
}

const DEGREES = [
  { value: 'F', label: '°F' },
  { value: 'C', label: '°C' },
]
const PRESSURES = PRESSURE_UNITS.map((value) => ({ value, label: `${UNITS[value].symbol}, ${UNITS[value].name}` }))
const READINGS = [
  { value: 'here', label: 'read in this kitchen (station pressure)' },
  { value: 'sea-level', label: 'from a weather report (reduced to sea level)' },
]
