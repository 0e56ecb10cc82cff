import 'server-only'
import type { JarLedgerPage } from '@/lib/queries/jar-ledger'
import { MOVEMENT_KINDS } from '@/shared/supplies/jar-ledger'
import { MOVEMENT_WORDS } from '@/shared/wording/say-ledger'
import { type CsvFile, csvName } from './csv-file'
import { writeCsv } from './write-csv'

const HEADER = ['Household', 'Size', 'Mouth', ...MOVEMENT_KINDS.map((kind) => MOVEMENT_WORDS[kind].head), 'Balance']

/** The jar ledger by household, size and mouth. Above 0 the household gets jars back, below 0 it owes some. */
export const ledgerFile = ({ lines }: JarLedgerPage, today: string): CsvFile => ({
  name: csvName('jar-ledger', today),
  text: writeCsv(
    HEADER,
    lines.map(({ household, size, mouth, sums, balance }) => [
      household,
      size,
      mouth,
      ...MOVEMENT_KINDS.map((kind) => sums[kind]),
      balance,
    ]),
  ),
})
