import { describe, expect, it } from 'vitest'
import { checkDigits97, MOD_37_2, type PureSystem, pureCheckCharacter } from '@/shared/trace/check-characters'

const MOD_11_2: PureSystem = { modulus: 11, radix: 2, payload: '0123456789', check: '0123456789X' }

describe('ISO/IEC 7064 pure systems against published identifiers', () => {
  it.each([
    ['079', 'X', 'worked example of MOD 11-2 in the documentation of python-stdnum, module iso7064.mod_11_2'],
    ['0794', '0', 'the same'],
    ['000000012281955', 'X', 'ISNI 0000 0001 2281 955X'],
    ['000000021825009', '7', 'ORCID iD 0000-0002-1825-0097, the example identifier of ORCID'],
  ])('MOD 11-2 of %s is %s (%s)', (payload, check) => {
    expect(pureCheckCharacter(MOD_11_2, payload)).toBe(check)
  })

  it.each([
    ['G123489654321', 'Y', 'worked examples of MOD 37-2 in python-stdnum, module iso7064.mod_37_2'],
    ['G123498654321', 'H', 'the same with two neighbours swapped'],
  ])('MOD 37-2 of %s is %s (%s)', (payload, check) => {
    expect(pureCheckCharacter(MOD_37_2, payload)).toBe(check)
  })

  it.each([
    ['99991234567890121414', '90', 'worked examples of MOD 97-10 in python-stdnum, module iso7064.mod_97_10'],
    ['4354111611551114', '31', 'the same'],
    ['22181321402534321446701611', '35', 'the same'],
    ['5367', '02', 'lowest value there is'],
    ['5303', '97', 'where another reading of the standard gives 00'],
    ['5335', '98', 'where another reading of the standard gives 01'],
    ['WEST12345698765432GB', '82', 'the IBAN GB82 WEST 1234 5698 7654 32, example of ISO 13616-1'],
  ])('MOD 97-10 of %s is %s (%s)', (payload, check) => {
    expect(checkDigits97(payload)).toBe(check)
  })

  it('leaves 1 modulo 97 for the whole number, which is how the standard says it', () => {
    for (const payload of ['0', '1', '5303', '4354111611551114', '99991234567890121414']) {
      expect(BigInt(payload + checkDigits97(payload)) % 97n).toBe(1n)
    }
  })

  it('has no value for a character outside its alphabet, and names it', () => {
    expect(() => pureCheckCharacter(MOD_37_2, 'g1')).toThrow(new RangeError('No value for the character "g"'))
    expect(() => checkDigits97('1-2')).toThrow(new RangeError('No value for the character "-"'))
  })
})
