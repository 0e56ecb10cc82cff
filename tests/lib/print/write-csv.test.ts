import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { writeCsv } from '@/lib/print/write-csv'

/** Reads CSV by the grammar of RFC 4180, section 2, character by character; written apart from the writer. */
function readCsv(file: string): string[][] {
  const records: string[][] = []
  let [record, field, isQuoted]: [string[], string, boolean] = [[], '', false]
  for (let at = 0; at < file.length; at += 1) {
    const character = file[at]
    if (isQuoted && character === '"' && file[at + 1] === '"') {
      field += '"'
      at += 1
    } else if (character === '"') isQuoted = !isQuoted
    else if (isQuoted) field += character
    else if (character === ',') {
      record.push(field)
      field = ''
    } else if (character === '\r' && file[at + 1] === '\n') {
      records.push([...record, field])
      ;[record, field] = [[], '']
      at += 1
    } else field += character
  }
  return records
}

describe('a CSV file', () => {
  it('quotes commas, quotes and line ends, and leaves spaces as data', () => {
    expect(writeCsv(['a', 'b,c', 'd"e', 'f\ng', ' lead'], [])).toBe('a,"b,c","d""e","f\ng", lead\r\n')
  })

  it('ends every record with CRLF and writes nothing for nothing', () => {
    expect(
      writeCsv(
        ['household', 'jars', 'balance'],
        [
          ['Alderby', 9, -31.07],
          ['Elmsway', null, undefined],
        ],
      ),
    ).toBe('household,jars,balance\r\nAlderby,9,-31.07\r\nElmsway,,\r\n')
  })

  it.each(['=1+1', '+1 555', '-cmd', '@sum', '\tx', '\rx', '\nx', '\0x', '＝1', '=HYPERLINK("http://x")', '-1+1', '--1', '-1e3'])(
    'does not let %j run as a formula',
    (text) => {
      expect(readCsv(writeCsv(['note'], [[text]]))[1]).toEqual([`'${text}`])
    },
  )

  it.each(['-31.07', '-5', '0', '12.50', 'plum', "'quoted", 'a=b', ' =1'])('leaves %j as it is', (text) => {
    expect(readCsv(writeCsv(['note'], [[text]]))[1]).toEqual([text])
  })

  it('is read back cell by cell, whatever was in it', () => {
    const someCell = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('a"b', ',', '\r\n', '"', '""', '=x', ''))
    fc.assert(
      fc.property(fc.array(fc.tuple(someCell, someCell, someCell), { maxLength: 8 }), (records) => {
        const back = readCsv(writeCsv(['x', 'y', 'z'], records))
        expect(back).toHaveLength(records.length + 1)
        for (const [index, record] of records.entries()) {
          for (const [column, cell] of record.entries()) expect([cell, `'${cell}`]).toContain(back[index + 1]?.[column])
        }
      }),
    )
  })

  it('refuses ragged records and numbers that are none', () => {
    expect(() => writeCsv(['a', 'b'], [['only one']])).toThrow(RangeError)
    expect(() => writeCsv(['a'], [[Number.NaN]])).toThrow(RangeError)
    expect(() => writeCsv(['a'], [[Number.POSITIVE_INFINITY]])).toThrow(RangeError)
  })
})
