import { expect, it } from 'vitest'
import { sayVolume } from '@/shared/kitchen/same-volume'

// 8, 12, 16, 24, 32 and 64 US fluid ounces; litres from the whole millilitres of one jar.
it.each([
  ['half-pint', 1, 'as much as ½ pint, 0.2 L'],
  ['half-pint', 8, 'as much as 4 pints, 1.9 L'],
  ['pint', 5, 'as much as 2½ quarts, 2.4 L'],
  ['pint', 2, 'as much as 1 quart, 0.9 L'],
  ['quart', 3, 'as much as 6 pints, 2.8 L'],
  ['12-oz', 3, 'as much as 2¼ pints, 1.1 L'],
  ['half-gallon', 1, 'as much as 2 quarts, 1.9 L'],
] as const)('%s × %i hold %s', (size, jars, said) => expect(sayVolume(size, jars)).toBe(said))
