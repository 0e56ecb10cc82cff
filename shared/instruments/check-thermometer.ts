import { ok, type Result, refuse } from '@/shared/result/result'

/** What a thermometer shows in crushed ice with water, and in boiling water, in degrees Celsius; either may be missing. */
export type ThermometerReadings = { readonly iceCelsius: number | null; readonly boilCelsius: number | null }

/** How far a thermometer is off: degrees Celsius to add to what it shows. Null for a check that was not made. */
export type ThermometerCheck = {
  readonly addAtIce: number | null
  readonly addAtBoil: number | null
  /** To add near the gel point: the boil check where there is one, since it is the nearer of the two. */
  readonly addNearBoil: number
  readonly usable: boolean
}

/** Neither ice nor boiling water was read. */
export type ThermometerProblem = { readonly kind: 'no-reading' }

/** Largest error that may be corrected for, degrees Celsius (about 4 F): common practice. */
export const LARGEST_CORRECTION_C = 2

/**
 * Compares a thermometer with melting ice (0 C) and with water boiling at this kitchen.
 *
 * @param boilingCelsius - boiling point of water here and now, from `boilingPoint`
 */
export function checkThermometer(
  { iceCelsius, boilCelsius }: ThermometerReadings,
  boilingCelsius: number,
): Result<ThermometerCheck, ThermometerProblem> {
  const addAtIce = iceCelsius === null ? null : -iceCelsius
  const addAtBoil = boilCelsius === null ? null : boilingCelsius - boilCelsius
  const addNearBoil = addAtBoil ?? addAtIce
  if (addNearBoil === null) return refuse({ kind: 'no-reading' })
  const errors = [addAtIce ?? 0, addAtBoil ?? 0].map(Math.abs)
  return ok({ addAtIce, addAtBoil, addNearBoil, usable: Math.max(...errors) <= LARGEST_CORRECTION_C })
}
