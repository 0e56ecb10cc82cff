import { JarRow } from '@/app/_drawings/jar-row'
import type { Produce } from '@/app/_drawings/produce'

/** One product that was shared out. */
export type SharedProduct = {
  id: string
  name: string
  produce: Produce
  sealed: number
  asked: number
  given: number
  left: number
  exactSum?: string
}

/** What one household gets of one product: jars of jars asked for, the exact part as "9.58", or why there is none. */
export type SharePart = { got: number; asked: number; exact?: string } | { none: string }

/** One household's line; a product it did not ask for has no part. */
export type ShareLine = { id: string; household: string; parts: Readonly<Record<string, SharePart | undefined>> }

const ROLE = { table: { role: 'table' }, group: { role: 'rowgroup' }, row: { role: 'row' }, cell: { role: 'cell' } }
const HEAD = { column: { role: 'columnheader' }, row: { role: 'rowheader' } }

/** The reckoning of a share-out, so plain that anyone can redo it by hand: jars got, jars not got, the exact part. */
export function ShareSheet({
  caption,
  products,
  lines,
}: {
  caption: string
  products: readonly SharedProduct[]
  lines: readonly ShareLine[]
}) {
  return (
    <table {...ROLE.table} className="shares">
      <caption className="unseen">{caption}</caption>
      <thead {...ROLE.group}>
        <tr {...ROLE.row}>
          <th {...HEAD.column} scope="col">
            <span className="unseen">Household</span>
          </th>
          {products.map((product) => (
            <ProductHead key={product.id} product={product} />
          ))}
        </tr>
      </thead>
      <tbody {...ROLE.group}>
        {lines.map((line) => (
          <tr key={line.id} {...ROLE.row}>
            <th {...HEAD.row} scope="row">
              {line.household}
            </th>
            {products.map((product) => (
              <PartCells key={product.id} product={product} part={line.parts[product.id]} />
            ))}
          </tr>
        ))}
      </tbody>
      <tfoot {...ROLE.group}>
        <tr {...ROLE.row}>
          <th {...HEAD.row} scope="row">
            Together
          </th>
          {products.map((product) => (
            <SumCells key={product.id} product={product} />
          ))}
        </tr>
      </tfoot>
    </table>
  )
}

function ProductHead({ product }: { product: SharedProduct }) {
  return (
    <>
      <th {...HEAD.column} scope="col">
        <span className="slab">{product.name}</span>
        {product.sealed} sealed, {product.asked} asked for
      </th>
      <th {...HEAD.column} scope="col" className="exact">
        exact part
      </th>
    </>
  )
}

function PartCells({ product, part }: { product: SharedProduct; part?: SharePart }) {
  const counted = part && 'got' in part ? part : undefined
  return (
    <>
      <td {...ROLE.cell} data-head={product.name}>
        {counted && (
          <span className="share">
            <span className="share-count">
              <b>{counted.got}</b> of {counted.asked}
            </span>
            <JarRow produce={product.produce} got={counted.got} asked={counted.asked} />
          </span>
        )}
        {part && 'none' in part && <span className="quiet">{part.none}</span>}
        {!part && <span className="quiet">none asked for</span>}
      </td>
      <td {...ROLE.cell} className="exact" data-head={counted?.exact ? 'exact part' : undefined}>
        {counted?.exact}
      </td>
    </>
  )
}

function SumCells({ product }: { product: SharedProduct }) {
  return (
    <>
      <td {...ROLE.cell} data-head={product.name}>
        {product.given} given, {product.left} left
      </td>
      <td {...ROLE.cell} className="exact" data-head={product.exactSum ? 'exact parts' : undefined}>
        {product.exactSum}
      </td>
    </>
  )
}
