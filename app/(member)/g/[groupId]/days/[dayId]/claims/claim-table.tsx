import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import type { ClaimRoom } from '@/lib/queries/claim-room'
import type { ClaimingHousehold, OfferedProduct } from '@/lib/queries/day-claims'
import { productNoun } from '@/shared/day/product-name'
import { whoAvoids } from '@/shared/day/who-avoids'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayMoment } from '@/shared/time/say-moment'

type Props = {
  groupId: string
  dayId: string
  products: readonly OfferedProduct[]
  households: readonly ClaimingHousehold[]
  room: ClaimRoom
}

/** Who asks for what, what is left and who waits; for the organiser. */
export function ClaimTable({ groupId, dayId, products, households, room }: Props) {
  const columns = [
    { key: 'household', head: 'Household' },
    ...products.map((product) => ({
      key: product.id,
      head: `${jarName(product.jarSize, 2)} of ${productNoun(product.recipe.title)}`,
      numeric: true,
    })),
  ]
  const rows = households.map((household) => ({
    id: household.id,
    cells: Object.fromEntries([['household', household.name], ...products.map((product) => [product.id, cell(product, household)])]),
  }))
  const sums = Object.fromEntries([
    ['household', 'Asked for'],
    ...products.map((product) => [product.id, `${product.claimed} of ${product.offered}`]),
  ])
  return (
    <Sheet lid={products.every(({ claimed, offered }) => claimed === offered) ? 'sunk' : 'domed'} title="Who asks for what">
      <Table caption="Jars asked for, by household and product" captionHidden columns={columns} rows={rows} sums={sums} />
      {products.map((product) => (
        <p key={product.id}>
          {product.offered - product.claimed === 0
            ? `All ${product.offered} ${jarName(product.jarSize, 2)} of ${productNoun(product.recipe.title)} are asked for.`
            : `${product.offered - product.claimed} ${jarName(product.jarSize, 2)} of ${productNoun(product.recipe.title)} are free.`}{' '}
          {sayWaiting(product, room)}
        </p>
      ))}
      {room.moves.length > 0 && (
        <Fold summary="What came from the waiting list">
          <ul className="list">
            {room.moves.map((move) => (
              <li key={`${move.at}-${move.preparationId}-${move.householdId}-${move.jars}`}>
                {sayMoment(move.at)}: {move.householdName}, {move.jars} {nameOf(products, move)}
              </li>
            ))}
          </ul>
        </Fold>
      )}
      <LinkButton kind="plain" href={`/g/${groupId}/days/${dayId}/claims/claims.csv`}>
        Claims as CSV
      </LinkButton>
    </Sheet>
  )
}

/** "Waiting: Dunmarrow 3, Elmsway 2 (all or none)." */
function sayWaiting(product: OfferedProduct, { waiting }: ClaimRoom): string {
  const list = waiting.filter(({ preparationId }) => preparationId === product.id)
  if (list.length === 0) return ''
  return `Waiting: ${list.map(({ householdName, jars, takesFewer }) => `${householdName} ${jars}${takesFewer ? '' : ' (all or none)'}`).join(', ')}.`
}

function nameOf(products: readonly OfferedProduct[], { preparationId, jars }: { preparationId: string; jars: number }): string {
  const product = products.find(({ id }) => id === preparationId)
  return product ? `${jarName(product.jarSize, jars)} of ${productNoun(product.recipe.title)}` : ''
}

/** A product that a household must not have says so in place of a number. */
function cell(product: OfferedProduct, household: ClaimingHousehold) {
  const avoided = whoAvoids(product.recipe.allergens, household)
  if (avoided.length > 0) return `no: ${avoided.map(({ allergen }) => allergen).join(', ')}`
  return product.claims.get(household.id) ?? 0
}
