import 'server-only'
import type { SharesPage } from '@/lib/queries/shares'
import { decimalOf } from '@/shared/allocation/largest-remainder'
import type { Share } from '@/shared/allocation/share-table'
import { sayShareReason } from '@/shared/wording/say-share'
import { type CsvFile, csvName } from './csv-file'
import { type CsvCell, writeCsv } from './write-csv'

const HEADER = ['Product', 'Size', 'Household', 'Asked', 'Sealed', 'Asked by all', 'First', 'Exact part', 'Jars', 'Reason', 'Jar numbers']

/** The share tables with every figure that is needed to redo them by hand. `seesWhy` says whose allergens may stand in the reason. */
export function sharesFile({ products }: SharesPage, date: string, seesWhy: (householdId: string) => boolean): CsvFile {
  const records = products.flatMap(({ title, jarSize, sealed, asked, cells, table }) =>
    table.shares.flatMap((share): CsvCell[][] => {
      const cell = cells[share.householdId]
      if (!cell || cell.asked + cell.jars === 0) return []
      const own = cell.own.map(({ shortName }) => shortName).join(' ')
      const facts = [title, jarSize, share.householdName, cell.asked, sealed, asked, share.first, exactPartOf(share), cell.jars]
      return [[...facts, reasonOf(share, cell.reason, seesWhy(share.householdId)), own]]
    }),
  )
  return { name: csvName('shares', date), text: writeCsv(HEADER, records) }
}

const exactPartOf = (share: Share) => (share.sum ? (share.first + decimalOf(share.sum.quota)).toFixed(4) : '')

function reasonOf(share: Share, awarded: string, seesWhy: boolean): string {
  if (share.reason.kind === 'allergen' && !seesWhy) return 'None.'
  return awarded || sayShareReason(share)
}
