import { CommandForm } from '@/app/_forms/command-form'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ReckoningPage } from '@/lib/queries/reckoning'
import type { Actor } from '@/shared/access/actor'
import { reachOf } from '@/shared/access/policy'
import { FUND } from '@/shared/reckoning/labour-rule'
import type { Payment, PaymentMark } from '@/shared/reckoning/payments'
import type { Transfer } from '@/shared/reckoning/settle'

interface PaymentsProps {
  readonly page: ReckoningPage
  readonly groupId: string
  readonly dayId: string
  readonly actor: Actor
  readonly money: (minor: number) => string
}

/** Who still pays whom, and who said that it was done. Money moves outside; what was said about it stays. */
export function Payments({ page, groupId, dayId, actor, money }: PaymentsProps) {
  const { transfers, payments, isFewest, reckoning } = page
  const open = payments.filter(({ received }) => received === null)
  const done = payments.filter(({ received }) => received !== null)
  const address = { groupId, dayId, actor, money, nameOf: (id: string) => nameOf(page, id) }
  // A payment that its payer has spoken of stands there once, with the word of the payer.
  const isSpokenOf = (transfer: Transfer) => open.some((payment) => isSame(payment, transfer))
  if (transfers.length + payments.length === 0) return null
  return (
    <Sheet
      lid={transfers.length === 0 ? 'sunk' : 'domed'}
      lidWords={transfers.length === 0 ? 'All paid' : 'To be paid'}
      title="Payments"
      aside={transfers.length > 0 && page.isWhole ? (isFewest ? 'no fewer will do' : 'perhaps fewer would do') : undefined}
    >
      <ul className="list">
        {open.map((payment) => (
          <PaymentRow key={keyOf(payment)} payment={payment} {...address} isDue={transfers.some((each) => isSame(each, payment))} />
        ))}
        {transfers
          .filter((transfer) => !isSpokenOf(transfer))
          .map((transfer) => (
            <PaymentRow key={keyOf(transfer)} payment={{ ...transfer, paid: null, received: null }} {...address} isDue />
          ))}
        {done.map((payment) => (
          <PaymentRow key={payment.received?.id} payment={payment} {...address} isDue />
        ))}
      </ul>
      <p className="src">
        {reckoning ? 'Money is handed over outside; a payment counts once its receiver, or the organiser, has marked it.' : ''}
      </p>
    </Sheet>
  )
}

const isSame = (a: Transfer, b: Transfer) => a.fromId === b.fromId && a.toId === b.toId && a.amount === b.amount
const keyOf = ({ fromId, toId, amount }: Transfer) => `${fromId} ${toId} ${amount}`

export const nameOf = ({ households }: ReckoningPage, id: string): string =>
  id === FUND.id ? FUND.name : (households.find((household) => household.id === id)?.name ?? id)

interface RowProps extends Omit<PaymentsProps, 'page'> {
  readonly payment: Payment
  readonly nameOf: (id: string) => string
  /** False when the sums have changed since it was marked. */
  readonly isDue: boolean
}

function PaymentRow({ payment, groupId, dayId, actor, money, nameOf: name, isDue }: RowProps) {
  const { fromId, toId, amount, paid, received } = payment
  const speaksForAll = reachOf(actor, 'mark-payment') === 'any'
  const maySay = (side: PaymentMark['side']) =>
    speaksForAll || (reachOf(actor, 'mark-payment') === 'own' && (side === 'paid' ? fromId : toId) === actor.householdId)
  const next = `/g/${groupId}/days/${dayId}/reckoning`
  return (
    <li>
      <p className="row apart">
        <span>
          <b>{name(fromId)}</b> pays <b>{name(toId)}</b>
        </span>
        <span className="num">{money(amount)}</span>
      </p>
      {!isDue && !received && <p>The sums have changed since: this payment is no longer asked for.</p>}
      {[paid, received].map(
        (mark) =>
          mark && (
            <p key={mark.id} className="quiet">
              {sayMark(mark)}
            </p>
          ),
      )}
      <div className="row">
        {(['paid', 'received'] as const).map((side) => {
          const mark = side === 'paid' ? paid : received
          if (!maySay(side) || (received && !mark)) return null
          return (
            <CommandForm
              key={side}
              command={mark ? 'undo-mark' : 'mark-payment'}
              groupId={groupId}
              formKey={freshKey()}
              next={next}
              fixed={mark ? { dayId, markId: mark.id } : { dayId, fromId, toId, amount, side }}
            >
              <SubmitButton small kind={mark || side === 'paid' ? 'plain' : 'do'} sending="Saving">
                {mark ? `Not ${side} after all` : side === 'paid' ? 'Mark as paid' : 'Mark as received'}
                <span className="unseen">
                  , {name(fromId)} to {name(toId)}
                </span>
              </SubmitButton>
            </CommandForm>
          )
        })}
      </div>
    </li>
  )
}

const sayMark = ({ side, by, at, note }: PaymentMark) =>
  `${side === 'paid' ? 'Paid' : 'Received'}, says ${by}, ${at.slice(0, 10)}${note ? `: ${note}` : ''}`
