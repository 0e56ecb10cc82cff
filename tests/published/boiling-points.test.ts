import { describe, expect, it } from 'vitest'
import { boilingPoint, boilingPointAt } from '@/shared/instruments/boiling-point'
import { PRINTED_BOILING_POINTS, PRINTED_GEL_POINTS, printedAtOrBelow } from '@/shared/instruments/published-temperatures'
import { standardPressure, stationPressure } from '@/shared/instruments/standard-atmosphere'
import { fahrenheitFromCelsius } from '@/shared/units/convert'

const FOOT = 0.3048

const celsius = (pascals: number): number => {
  const found = boilingPoint(pascals)
  if (!found.ok) throw new Error(`No boiling point at ${pascals} Pa`)
  return found.value
}

const celsiusAt = (metres: number): number => celsius(standardPressure(metres))

describe('the saturation equation', () => {
  // IAPWS Industrial Formulation 1997, Table 36: pressure in MPa, saturation temperature in K
  it.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('gives the printed temperature at %f MPa', (megapascals, kelvin) => {
    expect(celsius(megapascals * 1e6) + 273.15).toBeCloseTo(kelvin, 6)
  })

  // IAPWS Industrial Formulation 1997, Table 35, read backwards: temperature in K, pressure in MPa
  it.each([
    [300, 0.00353658941],
    [500, 2.63889776],
    [600, 12.3443146],
  ])('gives %f K back from its printed pressure', (kelvin, megapascals) => {
    expect(celsius(megapascals * 1e6) + 273.15).toBeCloseTo(kelvin, 5)
  })

  // Perry's Chemical Engineers' Handbook, saturated water: T in K, p in MPa to six decimals (0.00003 MPa is 0.03 K at most here)
  it.each([
    [350, 0.041682],
    [360, 0.062194],
    [370, 0.090535],
    [380, 0.12885],
  ])('meets the handbook at %f K', (kelvin, megapascals) => {
    expect(Math.abs(celsius(megapascals * 1e6) + 273.15 - kelvin)).toBeLessThan(0.03)
  })

  it('boils water at 99.974 C under the standard atmosphere', () => {
    expect(celsius(101325)).toBeCloseTo(99.974, 3)
  })

  it('moves by the published amount for each inch of mercury near sea level', () => {
    const inch = fahrenheitFromCelsius(celsius(101325)) - fahrenheitFromCelsius(celsius(101325 - 3386.389))
    expect(inch).toBeCloseTo(1.67, 1) // 1 F for 0.59 inHg is 1.69 F an inch
  })
})

describe('the standard atmosphere', () => {
  // ICAO Doc 7488: geometric metres, pascals
  it.each([
    [0, 101325],
    [1000, 89876.3],
    [2000, 79501.4],
  ])('prints its pressure at %d m', (metres, pascals) => {
    expect(Math.abs(standardPressure(metres) - pascals)).toBeLessThan(0.1)
  })

  // Published table in feet and psi; its third decimal is rounded unevenly
  it.each([
    [1000, 14.175],
    [2000, 13.664],
    [3000, 13.173],
    [4000, 12.682],
    [5000, 12.23],
    [6000, 11.778],
    [7000, 11.341],
    [8000, 10.914],
    [9000, 10.506],
    [10000, 10.108],
  ])('is within 0.011 psi of the printed value at %d ft', (feet, psi) => {
    expect(Math.abs(standardPressure(feet * FOOT) / 6894.757293168 - psi)).toBeLessThan(0.011)
  })

  it('scales the reported sea-level pressure by its own ratio', () => {
    expect(stationPressure(101325, 1500)).toBeCloseTo(standardPressure(1500), 6)
    expect(stationPressure(100325, 0)).toBeCloseTo(100325, 6)
  })
})

describe('the boiling point at a height', () => {
  // ICAO pressure with IAPWS-IF97: metres, C (to 0.02), then feet, F (to 0.03)
  it.each([
    [0, 99.97],
    [500, 98.31],
    [1000, 96.65],
    [1500, 94.98],
    [2000, 93.32],
    [2500, 91.65],
    [3000, 89.98],
  ])('meets the metric table at %d m', (metres, boils) => {
    expect(Math.abs(celsiusAt(metres) - boils)).toBeLessThanOrEqual(0.02)
  })

  it.each([
    [0, 211.95],
    [1000, 210.13],
    [2000, 208.31],
    [3000, 206.48],
    [4000, 204.66],
    [5000, 202.83],
    [6000, 201.0],
    [7000, 199.17],
    [8000, 197.34],
    [9000, 195.5],
    [10000, 193.67],
  ])('meets the table in feet at %d ft', (feet, boils) => {
    expect(Math.abs(fahrenheitFromCelsius(celsiusAt(feet * FOOT)) - boils)).toBeLessThanOrEqual(0.03)
  })

  // Rise and fall of the boiling point with the weather: metres, change of station pressure in Pa, change in C
  it.each([
    [0, -3000, -0.84],
    [0, 1000, 0.275],
    [1500, -1000, -0.323],
    [1500, 3000, 0.95],
    [3000, -3000, -1.147],
    [3000, 1000, 0.373],
  ])('moves with the weather at %d m by %d Pa', (metres, change, moves) => {
    const pressure = standardPressure(metres)
    expect(celsius(pressure + change) - celsius(pressure)).toBeCloseTo(moves, 2)
  })

  // USDA AIB No. 539, altitude table: it lies above the standard atmosphere, by 1.03 F at 10,000 ft
  it.each([
    [0, 212.0, 0.05],
    [1000, 210.2, 0.07],
    [2000, 208.5, 0.19],
    [3000, 206.7, 0.22],
    [4000, 204.9, 0.24],
    [5000, 203.2, 0.37],
    [6000, 201.5, 0.5],
    [7000, 199.8, 0.63],
    [8000, 198.1, 0.76],
    [9000, 196.4, 0.9],
    [10000, 194.7, 1.03],
  ])('shows the printed value beside it at %d ft', (feet, printed, difference) => {
    const row = printedAtOrBelow(PRINTED_BOILING_POINTS.rows, feet)
    expect(row).toEqual({ feet, fahrenheit: printed })
    expect(Math.abs(printed - fahrenheitFromCelsius(celsiusAt(feet * FOOT)) - difference)).toBeLessThan(0.04)
  })

  // Michigan State University Extension, Preserving Food Safely (1997), item 01600890
  it('holds the printed gel points, and none between two steps', () => {
    expect(PRINTED_GEL_POINTS.rows.map(({ fahrenheit }) => fahrenheit)).toEqual([220, 218, 216, 214, 212, 211, 209, 207, 205])
    expect(printedAtOrBelow(PRINTED_GEL_POINTS.rows, 4999)).toEqual({ feet: 4000, fahrenheit: 212 })
    expect(printedAtOrBelow(PRINTED_GEL_POINTS.rows, -1)).toBeUndefined()
  })

  it('refuses a pressure outside the equation', () => {
    expect(boilingPoint(611.212)).toEqual({ ok: false, problem: { kind: 'pressure-out-of-range', pascals: 611.212 } })
    expect(boilingPoint(Number.NaN).ok).toBe(false)
    expect(boilingPoint(22_064_001).ok).toBe(false)
    expect(boilingPoint(611.213).ok && boilingPoint(22_064_000).ok).toBe(true)
    expect(boilingPointAt(0)).toEqual(boilingPoint(101325))
  })
})
