import { METRES_PER_FOOT } from '@/shared/process/elevation'
import { ok, type Result } from '@/shared/result/result'
import { boilingPoint, gelPoint, type PressureProblem } from './boiling-point'
import { standardPressure, stationPressure } from './standard-atmosphere'

/** An air pressure in pascals, as read in the kitchen, or as reported for sea level by a weather service. */
export type AirPressure = { readonly pascals: number; readonly reading: 'here' | 'sea-level' }

/** What water and jam do in one kitchen, in degrees Celsius. For operators' checks only: no process time comes from it. */
export type KitchenTemperatures = {
  /** Air pressure at the kitchen that was used, pascals. */
  readonly pascals: number
  readonly basis: 'standard-atmosphere' | 'read-here' | 'from-sea-level'
  readonly boilingCelsius: number
  readonly gelCelsius: number
  /** A pressure said to be read here that no weather gives at this height: probably one that was reported for sea level. */
  readonly isLikelySeaLevel: boolean
}

/**
 * Boiling point and gel point for a kitchen, from its elevation, or from an air pressure where one was read.
 *
 * @param elevationFeet - feet above sea level
 */
export function kitchenTemperatures(elevationFeet: number, air: AirPressure | null): Result<KitchenTemperatures, PressureProblem> {
  const metres = elevationFeet * METRES_PER_FOOT
  const pascals = pressureAt(metres, air)
  const boiling = boilingPoint(pascals)
  if (!boiling.ok) return boiling
  return ok({
    pascals,
    basis: air === null ? 'standard-atmosphere' : air.reading === 'here' ? 'read-here' : 'from-sea-level',
    boilingCelsius: boiling.value,
    gelCelsius: gelPoint(boiling.value),
    isLikelySeaLevel: air?.reading === 'here' && pascals - standardPressure(metres) > WEATHER_PASCALS,
  })
}

function pressureAt(metres: number, air: AirPressure | null): number {
  if (air === null) return standardPressure(metres)
  return air.reading === 'here' ? air.pascals : stationPressure(air.pascals, metres)
}

/** How far above the standard atmosphere a strong high lies, pascals; rounded up, common practice. */
const WEATHER_PASCALS = 5000
