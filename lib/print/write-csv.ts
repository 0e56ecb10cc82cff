import 'server-only'

/** One cell: a number stays a number, everything else is text. Nothing is an empty cell. */
export type CsvCell = string | number | boolean | null | undefined

/**
 * What spreadsheets on a desk need at the start of a file to read it as UTF-8. Not part of RFC 4180, so it is added by whoever hands the file to a person.
 */
export const BYTE_ORDER_MARK = '\uFEFF'

/** A text that a spreadsheet could take for a formula. Source: OWASP ASVS 5.0, V1.2.10; the wide forms and line ends are ours. */
const FORMULA_START = /^[=+\-@\t\r\n\0＝＋－＠]/

const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/

/**
 * A CSV file by RFC 4180: CRLF after every record, fields quoted where they must be, as many fields in each record as in the header.
 *
 * Text that could be run as a formula gets an apostrophe in front; plain numbers, also negative ones, are left as they are.
 *
 * @throws RangeError when a record has more or fewer fields than the header, and for numbers that are not finite
 */
export function writeCsv(header: readonly string[], records: Iterable<readonly CsvCell[]>): string {
  const lines = [header.map(writeCell).join(',')]
  for (const record of records) {
    if (record.length !== header.length) throw new RangeError(`${record.length} fields under a header of ${header.length}`)
    lines.push(record.map(writeCell).join(','))
  }
  return `${lines.join('\r\n')}\r\n`
}

function writeCell(cell: CsvCell): string {
  if (cell === null || cell === undefined) return ''
  if (typeof cell === 'number' && !Number.isFinite(cell)) throw new RangeError(`Not a number to write: ${cell}`)
  const text = typeof cell === 'string' ? guardFormula(cell) : String(cell)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

const guardFormula = (text: string) => (FORMULA_START.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text)
