import { describe, expect, it } from 'vitest'
import { decodeForm } from '@/shared/forms/decode-form'

function form(...entries: [name: string, value: string | Blob][]): FormData {
  const made = new FormData()
  for (const [name, value] of entries) made.append(name, value)
  return made
}

describe('a posted form', () => {
  it('becomes an object of texts', () => {
    expect(decodeForm(form(['name', 'Alderby'], ['headcount', '4'])).input).toEqual({ name: 'Alderby', headcount: '4' })
  })

  it('makes a list of a name that ends in []', () => {
    expect(decodeForm(form(['skills[]', 'jam'], ['skills[]', 'brine'])).input).toEqual({ skills: ['jam', 'brine'] })
  })

  it('makes a list of one, and an empty one of a list where nothing was ticked but was asked', () => {
    expect(decodeForm(form(['skills[]', 'jam'])).input).toEqual({ skills: ['jam'] })
    expect(decodeForm(form(['skills[]', ''])).input).toEqual({ skills: [] })
  })

  it('takes the last of two values under one name, as a checkbox behind a hidden field sends them', () => {
    expect(decodeForm(form(['active', 'no'], ['active', 'yes'])).input).toEqual({ active: 'yes' })
  })

  it('leaves out what was left empty, and still gives it back to the screen', () => {
    expect(decodeForm(form(['note', '']))).toEqual({ input: {}, typed: { note: '' } })
  })

  it('leaves out our own fields and those of the framework', () => {
    expect(decodeForm(form(['_command', 'x'], ['_key', 'y'], ['$ACTION_ID_1', ''], ['name', 'A']))).toEqual({
      input: { name: 'A' },
      typed: { name: 'A' },
    })
  })

  it('leaves out a file', () => {
    expect(decodeForm(form(['name', new Blob(['x'])], ['note', 'n'])).input).toEqual({ note: 'n' })
  })

  it.each(['__proto__', '__proto__[]', 'constructor', 'toString', 'a.b', 'a[b]'])('takes %s for a name like any other', (name) => {
    const { input } = decodeForm(form([name, 'x']))
    expect(Object.getPrototypeOf(input)).toBe(Object.prototype)
    expect(Object.values(input).every((value) => value === 'x' || (Array.isArray(value) && value[0] === 'x'))).toBe(true)
    expect(({} as Record<string, unknown>).x).toBeUndefined()
  })

  it('never makes an object of a value', () => {
    expect(decodeForm(form(['preparationId', '{"not":""}'])).input).toEqual({ preparationId: '{"not":""}' })
  })

  it('drops NUL, which the store cannot hold', () => {
    expect(decodeForm(form(['name', 'Al\u0000derby'], ['skills[]', 'j\u0000am']))).toEqual({
      input: { name: 'Alderby', skills: ['jam'] },
      typed: { name: 'Alderby', skills: ['jam'] },
    })
  })
})
