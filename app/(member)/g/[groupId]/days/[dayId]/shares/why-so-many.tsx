import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import type { SharedOut, SharesPage } from '@/lib/queries/shares'
import { productName } from '@/shared/day/product-name'
import { explainShare } from '@/shared/wording/explain-share'
import { sayQuota, sayShareReason } from '@/shared/wording/say-share'

type Props = { page: SharesPage; householdId: string; seesAll: boolean }

/** The sum behind one's own jars in whole sentences, to redo by hand; behind everybody's for those who may see every household. */
export function WhySoMany({ page, householdId, seesAll }: Props) {
  const own = page.households.find(({ id }) => id === householdId)
  const others = seesAll ? page.households.filter(({ id }) => id !== householdId) : []
  if (!own && others.length === 0) return null
  const reasons = (id: string, isOwn: boolean) =>
    page.products.map((product) => <Why key={product.preparationId} {...{ product, householdId: id, isOwn }} />)
  const ofOthers = others.map(({ id, name }) => (
    <section key={id}>
      <h3>{name}</h3>
      {reasons(id, false)}
    </section>
  ))
  return (
    <Sheet lid="sunk" lidWords="Worked out" title={own ? `Why ${own.name} gets so many` : 'Why so many'}>
      {own && reasons(own.id, true)}
      {others.length > 0 && (
        <div className="screen-only">
          <Fold summary={own ? 'Why the others get so many' : 'Household by household'}>{ofOthers}</Fold>
        </div>
      )}
      {/* What is folded away does not come out on paper, and the printed table is to be redone by hand. */}
      <div className="paper-only">{ofOthers}</div>
    </Sheet>
  )
}

type WhyProps = { product: SharedOut; householdId: string; isOwn: boolean }

function Why({ product: { title, sealed, cells, table }, householdId, isOwn }: WhyProps) {
  const share = table.shares.find((each) => each.householdId === householdId)
  const cell = cells[householdId]
  if (!share || !cell || sealed === 0) return null
  // What was awarded stands as it was written down; as long as the table says the same, it is said in whole sentences.
  const isAsReckoned =
    cell.jars === share.jars && cell.quota === sayQuota(share) && (cell.reason || sayShareReason(share)) === sayShareReason(share)
  return (
    <p>
      <b>
        {productName(title)}, {cell.jars}:
      </b>{' '}
      {isOwn && isAsReckoned ? explainShare(table, share) : cell.reason || sayShareReason(share)}
    </p>
  )
}
