import 'server-only'
import type { ClaimRoom } from '@/lib/queries/claim-room'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import { productName } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { type CsvFile, csvName } from './csv-file'
import { writeCsv } from './write-csv'

const HEADER = ['Product', 'Jar', 'Household', 'Asked for', 'Place in waiting list', 'Waits for', 'Takes fewer', 'Offered']

/** Who asks for what and who waits: one record for each household and product with a claim or a wish, by product and name. */
export function claimsFile(date: string, products: readonly OfferedProduct[], { waiting, households }: ClaimRoom): CsvFile {
  const records = products.flatMap((product) => {
    const list = waiting.filter(({ preparationId }) => preparationId === product.id)
    const names = new Map([...households.map(({ id, name }) => [id, name] as const), ...product.claimants])
    const asking = [...names].filter(([id]) => product.claims.has(id) || list.some(({ householdId }) => householdId === id))
    return asking.map(([id, name]) => {
      const place = list.findIndex(({ householdId }) => householdId === id)
      const wish = list[place]
      return [
        ...[`${product.letter}: ${productName(product.recipe.title)}`, jarName(product.jarSize), name, product.claims.get(id) ?? 0],
        ...[wish ? place + 1 : '', wish?.jars ?? '', wish ? (wish.takesFewer ? 'yes' : 'no') : '', product.offered],
      ]
    })
  })
  return { name: csvName('claims', date), text: writeCsv(HEADER, records) }
}
