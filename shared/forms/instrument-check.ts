import { z } from 'zod'
import { convert } from '@/shared/units/convert'
import type { UnitId } from '@/shared/units/units'
import { orEmpty } from './or-empty'

/** Units in which weather stations and barometers say the air pressure. */
export const PRESSURE_UNITS = ['hPa', 'inHg', 'mmHg', 'kPa'] as const satisfies readonly UnitId[]

/** Air pressures at which people can: from about 18,000 ft up to a strong high below sea level, in hPa. */
const LOWEST_HPA = 500
const HIGHEST_HPA = 1100

const number = (ask: string) =>
  z
    .string(ask)
    .trim()
    .regex(/^-?\d{1,4}(\.\d{1,3})?$/, ask)
    .transform(Number)

/** What an operator reads off the instruments; each check may be left out. */
export const InstrumentCheck = z
  .strictObject({
    pressure: orEmpty(number('Type the pressure as a number, such as 990.')),
    pressureUnit: orEmpty(z.enum(PRESSURE_UNITS, 'Choose a unit from the list.')),
    reading: orEmpty(z.enum(['here', 'sea-level'], 'Say where that pressure holds.')),
    ice: orEmpty(number('Type what it shows in ice water, such as 32.5.')),
    boil: orEmpty(number('Type what it shows in boiling water, such as 210.')),
    degrees: orEmpty(z.enum(['F', 'C'], 'Choose Fahrenheit or Celsius.')),
  })
  .refine(({ pressure, reading }) => pressure === undefined || reading !== undefined, {
    error: 'Say whether it was read here or reported for sea level.',
    path: ['reading'],
  })
  .refine(({ pressure, pressureUnit }) => pressure === undefined || isPossible(pressure, pressureUnit), {
    error: `Choose its unit; between ${LOWEST_HPA} and 1,100 hPa (14.8 and 32.5 inHg).`,
    path: ['pressure'],
  })
  .refine(({ ice, boil, degrees }) => (ice === undefined && boil === undefined) || degrees !== undefined, {
    error: 'Say whether that is Fahrenheit or Celsius.',
    path: ['degrees'],
  })
  .refine(({ degrees, ice, boil, pressure }) => degrees === undefined || [ice, boil, pressure].some((read) => read !== undefined), {
    error: 'Type what it shows in ice water or in boiling water, or the air pressure: one of them is enough.',
    path: ['ice'],
  })
export type InstrumentCheck = z.infer<typeof InstrumentCheck>

function isPossible(pressure: number, unit: UnitId | undefined): boolean {
  if (unit === undefined) return false
  const converted = convert(pressure, unit, 'hPa')
  return converted.ok && converted.value >= LOWEST_HPA && converted.value <= HIGHEST_HPA
}
