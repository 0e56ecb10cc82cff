/**
 * A pure check-character system with one check character: modulus, radix, and the characters of the payload and of the check position, each at the
 * place of its value.
 *
 * Source: ISO/IEC 7064:2003, Check character systems, pure systems.
 */
export interface PureSystem {
  readonly modulus: number
  readonly radix: number
  readonly payload: string
  readonly check: string
}

const DIGITS_AND_LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/**
 * MOD 37-2: digits and capital letters, check position also `*`.
 *
 * Finds every single wrong character and every swap of two neighbours, the check character included.
 * Source: ISO/IEC 7064:2003.
 */
export const MOD_37_2: PureSystem = { modulus: 37, radix: 2, payload: DIGITS_AND_LETTERS, check: `${DIGITS_AND_LETTERS}*` }

/**
 * The check character of a payload in a pure system: with it appended, the weighted sum leaves 1 modulo the modulus.
 *
 * @throws RangeError for a character that the system does not have; normalise first
 */
export function pureCheckCharacter(system: PureSystem, payload: string): string {
  let sum = 0
  for (const character of payload) sum = ((sum + valueIn(system.payload, character)) * system.radix) % system.modulus
  return system.check.charAt((system.modulus + 1 - sum) % system.modulus)
}

/**
 * The two check digits of MOD 97-10, `02` to `98`; letters count as two digits, A = 10 to Z = 35.
 *
 * Finds every wrong digit, every letter taken for another letter, and every swap of two neighbouring digits or letters. A digit taken for a letter
 * can pass, so whoever uses it fixes which places hold letters.
 * Source: ISO/IEC 7064:2003 (MOD 97-10); the letters as in ISO 13616-1.
 *
 * @throws RangeError for anything but digits and capital letters
 */
export function checkDigits97(payload: string): string {
  let remainder = 0
  for (const character of payload) {
    const value = valueIn(DIGITS_AND_LETTERS, character)
    remainder = (remainder * (value < 10 ? 10 : 100) + value) % 97
  }
  return String(98 - ((remainder * 100) % 97)).padStart(2, '0')
}

function valueIn(alphabet: string, character: string): number {
  const value = alphabet.indexOf(character)
  if (value < 0) throw new RangeError(`No value for the character ${JSON.stringify(character)}`)
  return value
}
