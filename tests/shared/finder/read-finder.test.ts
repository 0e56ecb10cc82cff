import { describe, expect, it } from 'vitest'
import { finderAddress } from '@/shared/finder/finder-address'
import { readFinder } from '@/shared/finder/read-finder'

describe('a question to the finder', () => {
  it('is read with its empty entries as not said', () => {
    const read = readFinder({ food: ' dill pickles ', elevation: '1,000', unit: 'ft', jar: 'pint', pack: '', gauge: '' })
    expect(read.ok && read.value.asked).toEqual({ food: 'dill pickles', elevation: 1000, unit: 'ft', jar: 'pint' })
  })

  it('names the entry that does not fit and keeps what was typed', () => {
    const read = readFinder({ food: 'figs', elevation: '6 hundred', unit: 'ft' })
    expect(read.ok && read.value.asked).toBeNull()
    expect(read.ok && read.value.errors).toEqual({ elevation: ['Type the elevation as a number, such as 650.'] })
    expect(read.ok && read.value.typed).toEqual({ food: 'figs', elevation: '6 hundred', unit: 'ft' })
  })

  it.each(['1e3', '0x10', '--5', '1,00', '12345678', 'NaN', '1;2'])('takes %s for no elevation', (elevation) => {
    const read = readFinder({ food: 'figs', elevation, unit: 'm' })
    expect(read.ok && read.value.errors.elevation).toHaveLength(1)
  })

  it('never guesses whether an elevation is feet or metres', () => {
    const read = readFinder({ food: 'figs', elevation: '650' })
    expect(read.ok && read.value.errors).toEqual({ unit: ['Say whether that is feet or metres.'] })
  })

  it('refuses names it does not know, names said twice, and more than 2 kB', () => {
    expect(readFinder({ food: 'figs', minutes: '5' })).toEqual({ ok: false, problem: { kind: 'unknown-name', name: 'minutes' } })
    expect(readFinder({ food: ['figs', 'corn'] })).toEqual({ ok: false, problem: { kind: 'said-twice', name: 'food' } })
    expect(readFinder({ food: 'f'.repeat(2048) })).toEqual({ ok: false, problem: { kind: 'too-long' } })
    expect(readFinder({ food: 'é'.repeat(400) })).toEqual({ ok: false, problem: { kind: 'too-long' } })
  })

  it('does not take an inherited name for one of its own', () => {
    expect(readFinder(JSON.parse('{"__proto__":"x"}'))).toEqual({ ok: false, problem: { kind: 'unknown-name', name: '__proto__' } })
    expect(readFinder({ constructor: 'x' })).toEqual({ ok: false, problem: { kind: 'unknown-name', name: 'constructor' } })
  })
})

describe('the address of a question', () => {
  it('says the fields in one order, escapes them and leaves the empty ones out', () => {
    expect(finderAddress('/processes', { jar: 'pint', gauge: '', food: 'figs & more' })).toBe('/processes?food=figs%20%26%20more&jar=pint')
    expect(finderAddress('/processes', {})).toBe('/processes')
  })
})
