import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import type { ClaimingHousehold, OfferedProduct } from '@/lib/queries/day-claims'
import { productNoun } from '@/shared/day/product-name'
import { whoAvoids } from '@/shared/day/who-avoids'
import { jarName } from '@/shared/kitchen/jar-sizes'

/** Who asks for what, and what is left; for the organiser. */
export function ClaimTable({ products, households }: { products: readonly OfferedProduct[]; households: readonly ClaimingHousehold[] }) {
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
            : `${product.offered - product.claimed} ${jarName(product.jarSize, 2)} of ${productNoun(product.recipe.title)} are free.`}
        </p>
      ))}
    </Sheet>
  )
}

/** A product that a household must not have says so in place of a number. */
function cell(product: OfferedProduct, household: ClaimingHousehold) {
  const avoided = whoAvoids(product.recipe.allergens, household)
  if (avoided.length > 0) return `no: ${avoided.map(({ allergen }) => allergen).join(', ')}`
  return product.claims.get(household.id) ?? 0
}
