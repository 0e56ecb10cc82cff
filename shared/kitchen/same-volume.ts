import { JAR_MILLILITRES, type JarSize, jarName } from './jar-sizes'

/** The size that each is compared with, and how many of that one jar holds: US customary sizes are whole fluid ounces, so this is exact. */
const BESIDE: Readonly<Record<JarSize, readonly [size: JarSize, each: number]>> = {
  'half-pint': ['pint', 0.5],
  '12-oz': ['pint', 0.75],
  pint: ['quart', 0.5],
  'pint-and-half': ['pint', 1.5],
  quart: ['pint', 2],
  'half-gallon': ['quart', 2],
}

const PARTS: Readonly<Record<string, string>> = { '0.25': '¼', '0.5': '½', '0.75': '¾' }

/**
 * What so many jars hold, in the next common size and in litres, so that pints and quarts can be told against one another:
 * "as much as 2½ quarts, 2.4 L".
 *
 * @param jars - whole jars, 1 or more
 */
export function sayVolume(size: JarSize, jars: number): string {
  const [beside, each] = BESIDE[size]
  const amount = jars * each
  const whole = Math.floor(amount)
  const part = PARTS[String(amount - whole)] ?? ''
  const figure = `${whole > 0 || part === '' ? whole : ''}${part}`
  const litres = (JAR_MILLILITRES[size] * jars) / 1000
  return `as much as ${figure} ${jarName(beside, amount > 1 ? 2 : 1)}, ${litres.toFixed(1)} L`
}
