import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fieldsOf, questionOf } from '@/shared/finder/finder-question'
import { readFinder } from '@/shared/finder/read-finder'

describe('the fields of an address', () => {
  it('come as a router hands them over, a name that stands there twice as a list', () => {
    expect(fieldsOf(new URLSearchParams('food=dill+pickles&elevation=1%2C000&unit=ft'))).toEqual({
      food: 'dill pickles',
      elevation: '1,000',
      unit: 'ft',
    })
    expect(fieldsOf(new URLSearchParams('food=figs&jar=pint&food=plums&food='))).toEqual({ food: ['figs', 'plums', ''], jar: 'pint' })
  })

  it('are refused as the server refuses them', () => {
    const problemOf = (search: string) => {
      const read = readFinder(fieldsOf(new URLSearchParams(search)))
      return read.ok ? null : read.problem
    }
    expect(problemOf('food=figs&food=plums')).toEqual({ kind: 'said-twice', name: 'food' })
    expect(problemOf('food=figs&minutes=5')).toEqual({ kind: 'unknown-name', name: 'minutes' })
    expect(problemOf('food=figs&__proto__=5')).toEqual({ kind: 'unknown-name', name: '__proto__' })
  })
})

describe('a question', () => {
  it('is the same however its address is written', () => {
    const question = 'food=d%C3%B6rr+plums&elevation=1%2C000'
    for (const written of ['food=d%c3%b6rr%20plums&elevation=1,000', 'food=dörr+plums&elevation=1%2C000', question])
      expect(questionOf(fieldsOf(new URLSearchParams(written)))).toBe(question)
  })

  it('is read back as the fields it was made of', () => {
    const names = fc.constantFrom('food', 'jar', 'unit', '7', '__proto__')
    fc.assert(
      fc.property(fc.array(fc.tuple(names, fc.string({ unit: 'grapheme' })), { maxLength: 6 }), (pairs) => {
        const fields = fieldsOf(pairs)
        expect(fieldsOf(new URLSearchParams(questionOf(fields)))).toEqual(fields)
      }),
    )
  })

  it('leaves out what is not there', () => {
    expect(questionOf({ food: 'figs', jar: undefined })).toBe('food=figs')
    expect(questionOf({})).toBe('')
  })
})
