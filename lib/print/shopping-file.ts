import 'server-only'
import { plainMoney } from '@/shared/reckoning/money'
import type { ShoppingPage } from '@/shared/supplies/day-list'
import { UNITS } from '@/shared/units/units'
import { sayPacks } from '@/shared/wording/say-shopping'
import { type CsvFile, csvName } from './csv-file'
import { writeCsv } from './write-csv'

const HEADER = [
  'Item',
  'For',
  'Unit',
  'Needed',
  'Of it spare',
  'In stock',
  'Given',
  'Bought',
  'Missing',
  'Buy',
  'About',
  'Buyer',
  'Run',
  'Paid',
]

/** The list, line by line, with what was paid for each. Amounts are in the unit of the line, money in the group's currency. */
export function shoppingFile({ items, day }: ShoppingPage): CsvFile {
  const money = (minor: number) => plainMoney(minor, day.currency)
  const records = items.map((item) => [
    ...[item.key, item.products.join(', '), UNITS[item.unit].symbol || UNITS[item.unit].name, item.needed, item.onTop],
    ...[item.inStock, item.given, item.boughtAmount, item.missing],
    item.plan.choice ? sayPacks(item.plan.choice) : '',
    item.plan.choice?.price === null || item.plan.choice?.price === undefined ? '' : money(item.plan.choice.price),
    ...[item.buyer?.name ?? '', item.run, money(item.bought.reduce((sum, { costMinor }) => sum + costMinor, 0))],
  ])
  return { name: csvName('shopping', day.date), text: writeCsv(HEADER, records) }
}
