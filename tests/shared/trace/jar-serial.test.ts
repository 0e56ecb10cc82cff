import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CODE_ALPHABET } from '@/shared/trace/code-alphabet'
import { formatSerial, makeSerial, readSerial, SERIAL_LENGTH, SERIAL_RANDOM_BYTES } from '@/shared/trace/jar-serial'

const someBytes = () => fc.uint8Array({ minLength: SERIAL_RANDOM_BYTES, maxLength: SERIAL_RANDOM_BYTES })
const someSerial = () => someBytes().map(makeSerial)

describe('a jar serial', () => {
  it('is made of readable characters only and reads back as itself', () => {
    fc.assert(
      fc.property(someBytes(), (bytes) => {
        const serial = makeSerial(bytes)
        expect(serial).toHaveLength(SERIAL_LENGTH)
        expect([...serial].every((character) => CODE_ALPHABET.includes(character))).toBe(true)
        expect(readSerial(formatSerial(serial))).toEqual({ ok: true, value: serial })
      }),
      { numRuns: 2000 },
    )
  })

  it('keeps at least 60 of the random bits: bytes that differ in the low 60 bits never meet', () => {
    const low60 = fc.bigInt({ min: 0n, max: (1n << 60n) - 1n })
    const bytesOf = (bits: bigint) => Uint8Array.from({ length: 9 }, (_, index) => Number((bits >> BigInt(8 * (8 - index))) & 255n))
    fc.assert(
      fc.property(low60, low60, (a, b) => {
        fc.pre(a !== b)
        expect(makeSerial(bytesOf(a))).not.toBe(makeSerial(bytesOf(b)))
      }),
    )
    for (let bit = 0n; bit < 60n; bit += 1n) expect(makeSerial(bytesOf(1n << bit))).not.toBe(makeSerial(bytesOf(0n)))
  })

  it('refuses every single wrong character and every swap of two neighbours', () => {
    fc.assert(
      fc.property(someSerial(), (serial) => {
        for (let at = 0; at < serial.length; at += 1) {
          for (const other of CODE_ALPHABET) {
            if (other === serial[at]) continue
            expect(readSerial(serial.slice(0, at) + other + serial.slice(at + 1))).toMatchObject({ problem: { kind: 'check-failed' } })
          }
          const [here = '', next = ''] = serial.slice(at, at + 2)
          if (next === '' || here === next) continue
          const swapped = serial.slice(0, at) + next + here + serial.slice(at + 2)
          expect(readSerial(swapped)).toMatchObject({ problem: { kind: 'check-failed' } })
        }
      }),
      { numRuns: 50 },
    )
  })

  it('is read in lower case, with spaces, strange dashes, full-width letters and look-alikes', () => {
    const serial = makeSerial(Uint8Array.from([0, 0, 0, 0, 0, 1, 0, 32, 27])) // has 0, 1 and V in it
    expect(serial).toMatch(/[0]/)
    const typed = formatSerial(serial).toLowerCase().replaceAll('0', 'o').replaceAll('1', 'l').replaceAll('v', 'u').replaceAll('-', ' – ')
    expect(readSerial(` ${typed}\u200b`)).toEqual({ ok: true, value: serial })
    const wide = [...serial].map((character) => String.fromCodePoint((character.codePointAt(0) ?? 0) + 0xfee0)).join('')
    expect(readSerial(wide)).toEqual({ ok: true, value: serial })
  })

  it('names the slip: a character too few, a sign that no code has, a failed check', () => {
    const serial = makeSerial(new Uint8Array(9))
    expect(readSerial(serial.slice(1))).toMatchObject({ problem: { kind: 'wrong-length', expected: 14, got: 13 } })
    expect(readSerial(`${serial.slice(1)}Ä`)).toMatchObject({ problem: { kind: 'wrong-character', character: 'Ä' } })
    expect(readSerial('')).toMatchObject({ problem: { kind: 'wrong-length', got: 0 } })
  })

  it('is not made from too few random bytes', () => {
    expect(() => makeSerial(new Uint8Array(8))).toThrow(RangeError)
  })

  it('takes nine bytes, and says so', () => {
    expect(() => makeSerial(new Uint8Array(SERIAL_RANDOM_BYTES - 1))).toThrow(new RangeError('A jar serial takes 9 random bytes'))
  })
})
