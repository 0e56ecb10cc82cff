/**
 * Air pressure of the standard atmosphere, pascals.
 *
 * p = 101325 (1 - 0.0065 H / 288.15)^5.25588, H = 6356766 z / (6356766 + z) geopotential metres; for 0 to 11,000 m, and usable below sea level.
 * Source: ICAO Doc 7488, Manual of the ICAO Standard Atmosphere.
 *
 * @param metres - geometric height above sea level
 */
export function standardPressure(metres: number): number {
  const geopotential = (EARTH_RADIUS_M * metres) / (EARTH_RADIUS_M + metres)
  return SEA_LEVEL_PA * (1 - (LAPSE_K_PER_M * geopotential) / SEA_LEVEL_K) ** EXPONENT
}

/**
 * Air pressure at the kitchen from the pressure that weather services report reduced to sea level, by the ratio of the standard
 * atmosphere. A fair approximation, not a measurement.
 *
 * @param seaLevelPascals - reported pressure; about 101,325
 * @param metres - height of the kitchen
 */
export const stationPressure = (seaLevelPascals: number, metres: number): number =>
  (seaLevelPascals * standardPressure(metres)) / SEA_LEVEL_PA

/** Standard air pressure at sea level, pascals; exact by definition. */
export const SEA_LEVEL_PA = 101325

const SEA_LEVEL_K = 288.15
const LAPSE_K_PER_M = 0.0065
const EARTH_RADIUS_M = 6356766
/** g / (R L) = 9.80665 / (287.05287 x 0.0065). */
const EXPONENT = 9.80665 / (287.05287 * LAPSE_K_PER_M)
