import { Facts } from '@/app/_ui/facts'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Source } from '@/app/_ui/source'
import type { InstrumentCheck } from '@/shared/forms/instrument-check'
import { checkThermometer, LARGEST_CORRECTION_C, type ThermometerCheck } from '@/shared/instruments/check-thermometer'
import type { KitchenTemperatures } from '@/shared/instruments/kitchen-temperatures'
import { celsiusFromFahrenheit } from '@/shared/units/convert'
import { sayDegrees, sayTemperature } from '@/shared/wording/say-temperature'

/** What the check found: how far the thermometer is off, and where jam gels on it. */
export function ThermometerResult({ check: { ice, boil, degrees }, here }: { check: InstrumentCheck; here: KitchenTemperatures }) {
  const inCelsius = (read: number | undefined) => (read === undefined ? null : degrees === 'C' ? read : celsiusFromFahrenheit(read))
  const checked = checkThermometer({ iceCelsius: inCelsius(ice), boilCelsius: inCelsius(boil) }, here.boilingCelsius)
  if (!checked.ok) return null
  const { addAtIce, addAtBoil, addNearBoil, usable } = checked.value
  return (
    <Sheet
      lid={usable ? 'sunk' : 'domed'}
      lidWords={usable ? 'Checked' : 'Not to be used'}
      title={usable ? 'This thermometer can be used' : undefined}
    >
      {!usable && (
        <Notice
          what="Leave this thermometer out."
          why={`It is off by more than ${sayDegrees(LARGEST_CORRECTION_C)}.`}
          instead="Take another one, or test the gel by a spoon or a cold plate."
        />
      )}
      <Facts
        facts={[
          ...(addAtIce === null ? [] : [{ label: 'In ice water', value: sayError(addAtIce) }]),
          ...(addAtBoil === null ? [] : [{ label: 'In boiling water', value: sayError(addAtBoil) }]),
          ...(usable ? [{ label: 'Jam gels when it shows', value: sayTemperature(here.gelCelsius - addNearBoil) }] : []),
        ]}
      />
      <Source>
        {`Melting ice is 32\u00a0°F (0\u00a0°C); water boils here at ${sayTemperature(here.boilingCelsius)}. Largest error that is corrected for, ${sayDegrees(LARGEST_CORRECTION_C)}: common practice. Gel point 8\u00a0°F above boiling water: state extension recipe for plum preserves, step 3.`}
      </Source>
    </Sheet>
  )
}

function sayError(add: NonNullable<ThermometerCheck['addAtIce']>): string {
  if (Math.abs(add) < 0.05) return 'True'
  return add > 0 ? `Shows ${sayDegrees(add)} too little: add that much` : `Shows ${sayDegrees(add)} too much: take that much off`
}
