import { Sheet } from '@/app/_ui/sheet'
import type { SharesPage } from '@/lib/queries/shares'
import { productName } from '@/shared/day/product-name'
import { sayShareReason } from '@/shared/wording/say-share'

/** The sum behind one household's jars, to redo by hand: one's own, or an example for those who may see every household. */
export function WhySoMany({ page, householdId, seesAll }: { page: SharesPage; householdId: string; seesAll: boolean }) {
  const household = page.households.find(({ id }) => id === householdId) ?? (seesAll ? page.households[0] : undefined)
  if (!household) return null
  return (
    <Sheet lid="sunk" lidWords="Worked out" title={`Why ${household.name} gets so many`}>
      {page.products.map((product) => {
        const share = product.table.shares.find((each) => each.householdId === household.id)
        const cell = product.cells[household.id]
        if (!share || !cell) return null
        return (
          <p key={product.preparationId}>
            <b>
              {productName(product.title)}, {cell.jars}:
            </b>{' '}
            {cell.reason || sayShareReason(share)}
          </p>
        )
      })}
    </Sheet>
  )
}
