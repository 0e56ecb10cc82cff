import 'server-only'
import Papa from 'papaparse'
import type { ImportProblem, ImportTable } from '@/shared/imports/check-import'
import { MOST_ROWS } from '@/shared/imports/import-kinds'

/**
 * Reads a CSV file (RFC 4180; comma, semicolon or tab) with the number that each line has in the file, also behind a cell of several lines. Empty lines are
 * passed over.
 */
export function readTable(text: string): { readonly table: ImportTable; readonly problems: readonly ImportProblem[] } {
  const plain = text.replace(/^\uFEFF/, '')
  const rows: { line: number; cells: string[] }[] = []
  const problems: ImportProblem[] = []
  let [line, from] = [1, 0]
  Papa.parse<string[]>(plain, {
    delimitersToGuess: [',', ';', '\t'],
    step({ data, errors, meta }, parser) {
      if (errors.some(({ type }) => type === 'Quotes'))
        problems.push({ line, field: '', say: 'A quote is opened and not closed. Close it, or take it out.' })
      if (data.some((cell) => cell.trim() !== '')) rows.push({ line, cells: data })
      for (let at = plain.indexOf('\n', from); at !== -1 && at < meta.cursor; at = plain.indexOf('\n', at + 1)) line += 1
      from = meta.cursor
      if (rows.length > MOST_ROWS + 1) parser.abort()
    },
  })
  const [head, ...rest] = rows
  return { table: { header: head?.cells ?? [], rows: rest }, problems }
}
