import { ok, type Result, refuse } from '@/shared/result/result'
import { standardPressure } from './standard-atmosphere'

/** Pressures the saturation equation holds for, pascals. */
export const SATURATION_RANGE_PA = { lowest: 611.213, highest: 22_064_000 } as const

/** The pressure (pascals) lies outside the saturation equation. */
export type PressureProblem = { readonly kind: 'pressure-out-of-range'; readonly pascals: number }

/**
 * The temperature at which pure water boils, in degrees Celsius (ITS-90: 99.97 at 101,325 Pa).
 *
 * For checking thermometers and finding the gel point only. Process times never come from a boiling point: they come from printed bands.
 * Source: IAPWS Industrial Formulation 1997, equation 31 (backward saturation equation).
 *
 * @param pascals - absolute pressure at the kitchen, 611.213 to 22,064,000 Pa
 */
export function boilingPoint(pascals: number): Result<number, PressureProblem> {
  if (!(pascals >= SATURATION_RANGE_PA.lowest && pascals <= SATURATION_RANGE_PA.highest))
    return refuse({ kind: 'pressure-out-of-range', pascals })
  return ok(saturationKelvin(pascals / 1e6) - 273.15)
}

/** The boiling point of pure water at a height, in degrees Celsius, in the standard atmosphere; weather moves it by about 0.3. */
export const boilingPointAt = (metres: number): Result<number, PressureProblem> => boilingPoint(standardPressure(metres))

/**
 * Degrees Celsius by which jam and jelly at the gel point stand above boiling water: 8 F.
 *
 * Source: state extension recipe for plum preserves, step 3 (crediting the National Center for Home Food Preservation).
 */
export const GEL_POINT_RISE_C = 40 / 9

/** The gel point of jam and jelly for a boiling point of water, both in degrees Celsius. */
export const gelPoint = (boilingCelsius: number): number => boilingCelsius + GEL_POINT_RISE_C

const N = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353, -4823.2657361591, 405113.40542057,
  -0.23855557567849, 650.17534844798,
] as const

function saturationKelvin(megapascals: number): number {
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = N
  const b = megapascals ** 0.25
  const e = b * b + n3 * b + n6
  const f = n1 * b * b + n4 * b + n7
  const g = n2 * b * b + n5 * b + n8
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g))
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2
}
