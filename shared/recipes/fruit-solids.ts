import type { Range } from './soluble-solids'

/**
 * Factors by which the weight of fruit juice is reckoned from its soluble solids; 100 / factor is the average percent of solids.
 *
 * Source: 21 CFR 150.140(b), fruit jelly; pear from 21 CFR 150.110(b), fruit butter.
 */
export const SOLIDS_FACTORS = {
  apple: 7.5,
  apricot: 7,
  blackberry: 10,
  'black raspberry': 9,
  boysenberry: 10,
  cherry: 7,
  crabapple: 6.5,
  cranberry: 9.5,
  fig: 5.5,
  gooseberry: 12,
  grape: 7,
  grapefruit: 11,
  guava: 13,
  loganberry: 9.5,
  orange: 8,
  peach: 8.5,
  pear: 6.5,
  pineapple: 7,
  plum: 7,
  pomegranate: 5.5,
  'prickly pear': 11,
  quince: 7.5,
  raspberry: 9.5,
  'red currant': 9.5,
  strawberry: 12.5,
  youngberry: 10,
} as const

/** A fruit of SOLIDS_FACTORS. */
export type FruitWithSolids = keyof typeof SOLIDS_FACTORS

/** Fruit differs by ripeness and year: two degrees Brix either way is common practice. */
const SPREAD_BRIX = 2

/** The soluble solids of a fruit in degrees Brix: the published average, with the usual spread about it. */
export function fruitBrix(fruit: FruitWithSolids): Range {
  const typical = 100 / SOLIDS_FACTORS[fruit]
  return { low: typical - SPREAD_BRIX, typical, high: typical + SPREAD_BRIX }
}

/** The same solids spread over juice and added water, in litres. */
export function dilutedBrix(brix: Range, juiceLitres: number, waterLitres: number): Range {
  const share = juiceLitres / (juiceLitres + waterLitres)
  return { low: brix.low * share, typical: brix.typical * share, high: brix.high * share }
}
