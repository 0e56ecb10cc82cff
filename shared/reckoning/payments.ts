import type { Minor } from './money'
import type { Balance, Transfer } from './settle'

/** One side's word on a payment. */
export interface PaymentMark extends Transfer {
  readonly id: string
  readonly side: 'paid' | 'received'
  readonly by: string
  readonly note: string
  /** ISO time. */
  readonly at: string
  /** The mark that this one takes back. */
  readonly undoes: string | null
}

/** A payment that somebody has spoken of, with both sides. */
export interface Payment extends Transfer {
  readonly paid: PaymentMark | null
  readonly received: PaymentMark | null
}

/**
 * The payments that the marks tell, in the order of their first mark. A mark that was taken back is as if it had never been made.
 *
 * Marks of the two sides belong together when they name the same parties and the same amount, each of the one with the next of the other, so that the
 * same payment made twice is two payments.
 */
export function paymentsOf(marks: readonly PaymentMark[]): Payment[] {
  const undone = new Set(marks.flatMap(({ undoes }) => undoes ?? []))
  const payments: { mark: PaymentMark; paid: PaymentMark | null; received: PaymentMark | null }[] = []
  for (const mark of marks) {
    if (mark.undoes !== null || undone.has(mark.id)) continue
    const open = payments.find((payment) => isSame(payment.mark, mark) && payment[mark.side] === null)
    if (open) open[mark.side] = mark
    else payments.push({ mark, paid: null, received: null, [mark.side]: mark })
  }
  return payments.map(({ mark: { fromId, toId, amount }, paid, received }) => ({ fromId, toId, amount, paid, received }))
}

const isSame = (a: Transfer, b: Transfer) => a.fromId === b.fromId && a.toId === b.toId && a.amount === b.amount

/** Balances after the payments that their receivers have confirmed; what was only said to be paid is still open. */
export function afterPayments(balances: readonly Balance[], payments: readonly Payment[]): Balance[] {
  const moved = new Map<string, Minor>()
  const add = (id: string, amount: Minor) => moved.set(id, (moved.get(id) ?? 0) + amount)
  for (const { fromId, toId, amount, received } of payments) {
    if (!received) continue
    add(fromId, amount)
    add(toId, -amount)
  }
  return balances.map((party) => ({ ...party, balance: party.balance + (moved.get(party.id) ?? 0) }))
}
