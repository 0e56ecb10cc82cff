import type { InstrumentCheck } from '@/shared/forms/instrument-check'
import type { AirPressure } from '@/shared/instruments/kitchen-temperatures'
import { convert } from '@/shared/units/convert'

/** The air pressure of a check in pascals; null where none was read. */
export function airPressureOf({ pressure, pressureUnit, reading }: InstrumentCheck): AirPressure | null {
  if (pressure === undefined || pressureUnit === undefined || reading === undefined) return null
  const pascals = convert(pressure, pressureUnit, 'Pa')
  return pascals.ok ? { pascals: pascals.value, reading } : null
}
