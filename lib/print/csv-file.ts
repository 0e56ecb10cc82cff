import 'server-only'

/** A file for a spreadsheet: its name in plain letters, and its text by RFC 4180. */
export interface CsvFile {
  readonly name: string
  readonly text: string
}

/** "shopping-2027-08-26.csv" */
export const csvName = (what: string, date: string): string => `${what}-${date}.csv`
