import type { CloseOut } from '@/lib/queries/close-out'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { EmptyCount, LidCount } from '@/shared/share/count-day'

/** Jars filled of one size. */
const filledOf = ({ tallies }: CloseOut, size: JarSize): number =>
  tallies.filter(({ jarSize }) => jarSize === size).reduce((sum, { jars }) => sum + jars, 0)

/** Empty jars as they should be, by the stock: what there was less what was filled. */
export function emptyCounts(page: CloseOut): Partial<Record<JarSize, EmptyCount>> {
  return Object.fromEntries(
    page.sizes.map((size) => {
      const [brought, bought] = [page.stock.brought[size] ?? 0, page.stock.bought[size] ?? 0]
      return [size, { brought, bought, returned: Math.max(0, brought + bought - filledOf(page, size)), brokenEmpty: 0 }]
    }),
  )
}

/** Lids and bands as they should be, by the stock and the lids that are on jars. */
export function lidCount({ stock, tallies }: CloseOut): LidCount {
  const used = tallies.reduce((sum, { lidsUsed }) => sum + lidsUsed, 0)
  return {
    lidsAtStart: stock.lids,
    lidsSpoiled: 0,
    lidsLeft: Math.max(0, stock.lids - used),
    bandsAtStart: stock.bands,
    bandsReturned: stock.bands,
    bandsDiscarded: 0,
    bandsOnJars: 0,
  }
}
