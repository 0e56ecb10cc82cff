import type { Elevation } from './process-query'

/** Metres in a foot, exact. Source: NIST Special Publication 811, Appendix B (international foot). */
export const METRES_PER_FOOT = 0.3048

/**
 * Whole feet above sea level. A part of a foot counts as the next foot, so that 1,000.2 ft reads the band from 1,001 ft.
 *
 * Metres are first settled to a millionth of a foot, so that 304.8 m is 1,000 ft and not a hair more.
 *
 * @returns null when the elevation is not known or is not a number; below sea level the number stays negative
 */
export function wholeFeet(elevation: Elevation): number | null {
  if (elevation === null) return null
  const feet = 'feet' in elevation ? elevation.feet : Math.round((elevation.metres / METRES_PER_FOOT) * 1e6) / 1e6
  if (!Number.isFinite(feet)) return null
  return feet < 0 ? Math.floor(feet) : Math.ceil(feet)
}
