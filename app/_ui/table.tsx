import type { ReactNode } from 'react'

/** One column; `numeric` ones stand right, in the figures' letter. */
export type Column<Key extends string = string> = { key: Key; head: string; numeric?: boolean; headHidden?: boolean }

/** One row: its cells by column. The first column is the row's name. */
export type Row<Key extends string = string> = { id: string; cells: Readonly<Record<Key, ReactNode>>; marked?: boolean }

type TableProps<Key extends string> = {
  caption: ReactNode
  captionHidden?: boolean
  columns: readonly Column<Key>[]
  rows: readonly Row<Key>[]
  /** A last row of sums. */
  sums?: Readonly<Partial<Record<Key, ReactNode>>>
  /** Stay a table on a phone and scroll sideways instead of turning each row into a list. */
  scrolls?: boolean
}

// A table that is laid out as blocks loses its meaning in some browsers, so the meaning is said once more.
const ROLE = { table: { role: 'table' }, group: { role: 'rowgroup' }, row: { role: 'row' }, cell: { role: 'cell' } }
const HEAD = { column: { role: 'columnheader' }, row: { role: 'rowheader' } }

/** A plain table. On a phone every row becomes a short list of the same cells. */
export function Table<Key extends string>({ caption, captionHidden, columns, rows, sums, scrolls }: TableProps<Key>) {
  const table = (
    <table {...ROLE.table} className={scrolls ? 'table' : 'table stacks'}>
      <caption className={captionHidden ? 'unseen' : undefined}>{caption}</caption>
      <thead {...ROLE.group}>
        <tr {...ROLE.row}>
          {columns.map((column) => (
            <th {...HEAD.column} key={column.key} scope="col" className={column.numeric ? 'n' : undefined}>
              {column.headHidden ? <span className="unseen">{column.head}</span> : column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody {...ROLE.group}>
        {rows.map((row) => (
          <TableRow key={row.id} columns={columns} cells={row.cells} marked={row.marked} />
        ))}
      </tbody>
      {sums && (
        <tfoot {...ROLE.group}>
          <TableRow columns={columns} cells={sums} />
        </tfoot>
      )}
    </table>
  )
  return scrolls ? <ScrollBox caption={caption}>{table}</ScrollBox> : table
}

function TableRow<Key extends string>({ columns, cells, marked }: TableRowProps<Key>) {
  const [first, ...others] = columns
  return (
    <tr {...ROLE.row} className={marked ? 'marked' : undefined}>
      {first && (
        <th {...HEAD.row} scope="row">
          {cells[first.key]}
        </th>
      )}
      {others.map((column) => (
        <td
          {...ROLE.cell}
          key={column.key}
          className={column.numeric ? 'n' : undefined}
          data-head={column.headHidden ? undefined : column.head}
        >
          {cells[column.key]}
        </td>
      ))}
    </tr>
  )
}

type TableRowProps<Key extends string> = {
  columns: readonly Column<Key>[]
  cells: Readonly<Partial<Record<Key, ReactNode>>>
  marked?: boolean
}

function ScrollBox({ caption, children }: { caption: ReactNode; children: ReactNode }) {
  return (
    <section className="table-scroll" {...REACHABLE} aria-label={typeof caption === 'string' ? caption : 'Table'}>
      {children}
    </section>
  )
}

// What scrolls must be reachable by keyboard.
const REACHABLE = { tabIndex: 0 }
