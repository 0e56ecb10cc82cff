import 'server-only'
import type { ReckoningPage } from '@/lib/queries/reckoning'
import { FUND } from '@/shared/reckoning/labour-rule'
import { plainMoney } from '@/shared/reckoning/money'
import { sayPool } from '@/shared/share/pool-products'
import { type CsvFile, csvName } from './csv-file'
import { type CsvCell, writeCsv } from './write-csv'

const HEADER = ['Sort', 'Household', 'To', 'What', 'How much', 'Pool', 'Jars', 'Amount', 'Currency', 'Marked']

/** Everything behind the reckoning in one table: receipts, gifts, what a jar cost, each household's line, what is still to be paid and what was. */
export function reckoningFile(page: ReckoningPage): CsvFile {
  const { currency, outlays, reckoning, transfers, payments, products, sizes } = page
  const money = (minor: number) => plainMoney(minor, currency)
  const name = (id: string) => (id === FUND.id ? FUND.name : (page.households.find((each) => each.id === id)?.name ?? id))
  const title = (id: string) => products.find((product) => product.id === id)?.title ?? id
  const row = (sort: string, more: Partial<Record<(typeof HEADER)[number], CsvCell>>): CsvCell[] =>
    HEADER.map((head) => (head === 'Sort' ? sort : head === 'Currency' ? currency : (more[head] ?? '')))
  const records = [
    ...outlays.map(({ kind, item, pack, householdName, poolId, amount }) =>
      row(kind === 'paid' ? 'receipt' : 'credit', {
        Household: householdName,
        What: item,
        'How much': pack,
        Pool: sayPool(poolId, products),
        Amount: money(amount),
      }),
    ),
    ...(reckoning?.jarCosts ?? []).map(({ product, cost }) =>
      row('one jar', { What: `${title(product)}, ${sizes[product] ?? ''}`, Jars: 1, Amount: money(cost) }),
    ),
    ...(reckoning?.parties ?? []).flatMap(({ householdName, jars, share, surcharge, paid, credited, balance }) => [
      row('part', { Household: householdName, Jars: jars, Amount: money(share) }),
      ...(surcharge > 0 ? [row('surcharge', { Household: householdName, Amount: money(surcharge) })] : []),
      row('paid or credited', { Household: householdName, Amount: money(paid + credited) }),
      row('balance', { Household: householdName, Amount: money(balance) }),
    ]),
    ...transfers.map(({ fromId, toId, amount }) => row('to pay', { Household: name(fromId), To: name(toId), Amount: money(amount) })),
    ...payments.map(({ fromId, toId, amount, paid, received }) =>
      row('payment', {
        ...{ Household: name(fromId), To: name(toId), Amount: money(amount) },
        Marked: [paid && `paid ${paid.by} ${paid.at}`, received && `received ${received.by} ${received.at}`].filter(Boolean).join('; '),
      }),
    ),
  ]
  return { name: csvName('reckoning', page.date), text: writeCsv(HEADER, records) }
}
