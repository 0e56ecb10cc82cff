/** The jar sizes that published tables and stock lists name, smallest first. */
export const JAR_SIZES = ['half-pint', '12-oz', 'pint', 'pint-and-half', 'quart', 'half-gallon'] as const
export type JarSize = (typeof JAR_SIZES)[number]

/**
 * Millilitres in one jar, filled to its nominal US fluid ounces (8, 12, 16, 24, 32, 64) and rounded to whole mL.
 *
 * One US fluid ounce is 29.5735295625 mL, exact.
 * Source: NIST Handbook 44, Appendix C (General Tables of Units of Measurement).
 */
export const JAR_MILLILITRES: Readonly<Record<JarSize, number>> = {
  'half-pint': 237,
  '12-oz': 355,
  pint: 473,
  'pint-and-half': 710,
  quart: 946,
  'half-gallon': 1893,
}

const NAMES: Readonly<Record<JarSize, readonly [one: string, many: string]>> = {
  'half-pint': ['half-pint', 'half-pints'],
  '12-oz': ['12 oz jar', '12 oz jars'],
  pint: ['pint', 'pints'],
  'pint-and-half': ['pint-and-a-half', 'pint-and-a-halfs'],
  quart: ['quart', 'quarts'],
  'half-gallon': ['half-gallon', 'half-gallons'],
}

/** "pint" or "pints", by the count. */
export const jarName = (size: JarSize, count = 1): string => NAMES[size][count === 1 ? 0 : 1]

/** "half-pint, 237 mL": the size with its metric volume, as the recipe's unit first. */
export const jarNameWithVolume = (size: JarSize): string => `${jarName(size)}, ${JAR_MILLILITRES[size]} mL`
