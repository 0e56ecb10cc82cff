import { ok, type Result, refuse } from '@/shared/result/result'
import { MOD_37_2, pureCheckCharacter } from '@/shared/trace/check-characters'
import { CODE_ALPHABET, type CodeProblem, normaliseCode, strangeCharacter } from '@/shared/trace/code-alphabet'

/** Characters in a jar serial without its dashes: 12 random ones, one that keeps the check readable, one check character. */
export const SERIAL_LENGTH = 14

/** Random bytes that one serial takes: 13 characters of 5 bits. */
export const SERIAL_RANDOM_BYTES = 9

const RANDOM_CHARACTERS = 13

/**
 * A jar serial out of random bytes: at least 60 random bits, so that a serial cannot be guessed from another, and an ISO/IEC 7064 MOD 37-2 check
 * character.
 *
 * That system may ask for a check character that our alphabet leaves out as a look-alike; then the thirteenth character moves on to the next
 * one that gives a readable check. Twelve characters of 5 bits are never touched.
 *
 * @param randomBytes - at least {@link SERIAL_RANDOM_BYTES} from a cryptographic source
 * @returns the serial as stored, without dashes
 * @throws RangeError when there are too few bytes
 */
export function makeSerial(randomBytes: Uint8Array): string {
  if (randomBytes.length < SERIAL_RANDOM_BYTES) throw new RangeError(`A jar serial takes ${SERIAL_RANDOM_BYTES} random bytes`)

  const values = fiveBitValues(randomBytes)
  const stem = values
    .slice(0, -1)
    .map((value) => CODE_ALPHABET.charAt(value))
    .join('')
  for (let step = 0; ; step += 1) {
    const payload = stem + CODE_ALPHABET.charAt((Number(values.at(-1)) + step) % CODE_ALPHABET.length)
    const check = pureCheckCharacter(MOD_37_2, payload)
    if (CODE_ALPHABET.includes(check)) return payload + check
  }
}

/** "7KQM2-XTRW9-HC4P": a stored serial in groups, to read and to type. */
export const formatSerial = (serial: string): string => `${serial.slice(0, 5)}-${serial.slice(5, 10)}-${serial.slice(10)}`

/** Reads a serial as people type it (lower case, spaces, dashes, look-alikes). Answers the stored form, or which slip was made. */
export function readSerial(typed: string): Result<string, CodeProblem> {
  const serial = normaliseCode(typed)
  const strange = strangeCharacter(serial)
  if (strange !== undefined) return refuse({ kind: 'wrong-character', typed, character: strange })
  const got = [...serial].length
  if (got !== SERIAL_LENGTH) return refuse({ kind: 'wrong-length', typed, expected: SERIAL_LENGTH, got })
  if (pureCheckCharacter(MOD_37_2, serial.slice(0, -1)) !== serial.at(-1)) return refuse({ kind: 'check-failed', typed })
  return ok(serial)
}

function fiveBitValues(bytes: Uint8Array): number[] {
  let bits = 0n
  for (const byte of bytes.subarray(0, SERIAL_RANDOM_BYTES)) bits = (bits << 8n) | BigInt(byte)
  return Array.from({ length: RANDOM_CHARACTERS }, (_, index) => Number((bits >> BigInt(5 * index)) & 31n))
}
