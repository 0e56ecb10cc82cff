import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkDigits97 } from '@/shared/trace/check-characters'
import { CODE_ALPHABET, CODE_LETTERS } from '@/shared/trace/code-alphabet'
import { type LotParts, makeLotNumber, readLotNumber, suggestBatchLetters } from '@/shared/trace/lot-number'

const D3: LotParts = { group: 'FH', date: '2027-08-26', batch: 'D3', load: 6 }

const someLetter = () => fc.constantFrom(...CODE_LETTERS)
const someParts = (): fc.Arbitrary<LotParts> =>
  fc.record({
    group: fc.array(someLetter(), { minLength: 2, maxLength: 4 }).map((letters) => letters.join('')),
    date: fc
      .date({ min: new Date('2000-01-01T00:00:00Z'), max: new Date('2099-12-31T00:00:00Z'), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10)),
    batch: fc.tuple(someLetter(), fc.integer({ min: 1, max: 99 })).map(([letter, number]) => `${letter}${number}`),
    load: fc.integer({ min: 0, max: 999 }),
  })

describe('a lot number', () => {
  it('says group, date, kettle batch, canner load and two check digits', () => {
    // F=15 H=17 270826 D=13 3 C=12 06 as one number, then 00: 98 less the remainder by 97.
    const check = 98n - (BigInt('1517270826133120600') % 97n)
    expect(makeLotNumber(D3)).toBe(`FH-270826-D3-C06-${check}`)
  })

  it('reads back as its parts, however it was typed', () => {
    fc.assert(
      fc.property(someParts(), (parts) => {
        const lotNumber = makeLotNumber(parts)
        const read = { ok: true, value: { ...parts, lotNumber } }
        expect(readLotNumber(lotNumber)).toEqual(read)
        expect(readLotNumber(lotNumber.toLowerCase().replaceAll('-', '').replaceAll('0', 'o').replaceAll('1', 'i'))).toEqual(read)
      }),
      { numRuns: 500 },
    )
  })

  it('refuses every single wrong character and every swap of two neighbours', () => {
    fc.assert(
      fc.property(someParts(), (parts) => {
        const code = makeLotNumber(parts).replaceAll('-', '')
        for (let at = 0; at < code.length; at += 1) {
          for (const other of CODE_ALPHABET) {
            if (other !== code[at]) expect(readLotNumber(code.slice(0, at) + other + code.slice(at + 1)).ok).toBe(false)
          }
          const [here = '', next = ''] = code.slice(at, at + 2)
          if (next !== '' && here !== next) expect(readLotNumber(code.slice(0, at) + next + here + code.slice(at + 2)).ok).toBe(false)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('tells a slip from something that is no lot number', () => {
    const good = makeLotNumber(D3)
    const bad = `${good.slice(0, -1)}${(Number(good.at(-1)) + 1) % 10}`
    expect(readLotNumber(bad)).toMatchObject({ problem: { kind: 'check-failed' } })
    expect(readLotNumber('plum jam')).toMatchObject({ problem: { kind: 'wrong-form' } })
    // check digits that fit do not make a day that never was, nor a second way to write a load
    for (const payload of ['FH270230D3C06', 'FH270826D3C006', 'FH270826D3C000'])
      expect(readLotNumber(payload + checkDigits97(payload))).toMatchObject({ problem: { kind: 'wrong-form' } })
    expect(readLotNumber('FH€')).toMatchObject({ problem: { kind: 'wrong-character', character: '€' } })
  })

  it('is not made from parts that have no place in it', () => {
    for (const wrong of [
      { group: 'F' },
      { group: 'OIL' },
      { date: '2027-02-29' },
      { date: '1999-12-31' },
      { batch: 'D0' },
      { batch: '33' },
      { load: -1 },
      { load: 1.5 },
      { load: 1000 },
    ]) {
      expect(() => makeLotNumber({ ...D3, ...wrong })).toThrow(RangeError)
    }
  })
})

describe('suggested letters', () => {
  it('give each product of a day a letter of its own', () => {
    expect(suggestBatchLetters(['Plum jam', 'Dill pickles'])).toEqual(['P', 'D'])
    expect(suggestBatchLetters(['Peach', 'Plum', 'Pepper', 'Lemon'])).toEqual(['P', 'M', 'E', 'N'])
    expect(suggestBatchLetters(['Élderflower', '1 l oil', '北京'])).toEqual(['E', 'A', 'B'])
    expect(new Set(suggestBatchLetters(Array.from({ length: 22 }, () => 'Plum'))).size).toBe(22)
    expect(() => suggestBatchLetters(Array.from({ length: 23 }, () => 'Plum'))).toThrow(RangeError)
  })
})
