import { describe, expect, it } from 'vitest'
import { creditForHours, surchargePercent } from '@/shared/reckoning/labour-rule'
import { afterPayments, type PaymentMark, paymentsOf } from '@/shared/reckoning/payments'

const mark = (id: string, side: PaymentMark['side'], more: Partial<PaymentMark> = {}): PaymentMark => ({
  ...{
    id,
    fromId: 'elmsway',
    toId: 'dunmarrow',
    amount: 3911,
    side,
    by: side === 'paid' ? 'Flora' : 'Esme',
    note: '',
    at: '',
    undoes: null,
  },
  ...more,
})
const said = (marks: readonly PaymentMark[]) =>
  paymentsOf(marks).map(({ amount, paid, received }) => [amount, paid?.id ?? null, received?.id ?? null])

describe('marks of payments', () => {
  it('of the two sides are one payment, in whatever order they come', () => {
    expect(said([mark('a', 'paid'), mark('b', 'received')])).toEqual([[3911, 'a', 'b']])
    expect(said([mark('b', 'received'), mark('a', 'paid')])).toEqual([[3911, 'a', 'b']])
  })

  it('of the same payment made twice are two', () => {
    expect(said([mark('a', 'paid'), mark('b', 'paid'), mark('c', 'received')])).toEqual([
      [3911, 'a', 'c'],
      [3911, 'b', null],
    ])
  })

  it('that were taken back, or name another amount, do not join', () => {
    expect(said([mark('a', 'paid'), mark('x', 'paid', { undoes: 'a' })])).toEqual([])
    expect(said([mark('a', 'paid'), mark('b', 'received', { amount: 3910 })])).toEqual([
      [3911, 'a', null],
      [3910, null, 'b'],
    ])
  })

  it('change the balances once the receiver has spoken, and not a cent is lost', () => {
    const balances = [
      { id: 'elmsway', name: 'Elmsway', balance: -3911 },
      { id: 'dunmarrow', name: 'Dunmarrow', balance: 3911 },
    ]
    expect(afterPayments(balances, paymentsOf([mark('a', 'paid')])).map(({ balance }) => balance)).toEqual([-3911, 3911])
    expect(afterPayments(balances, paymentsOf([mark('b', 'received')])).map(({ balance }) => balance)).toEqual([0, 0])
    expect(afterPayments(balances, paymentsOf([mark('b', 'received', { amount: 1000 })])).map(({ balance }) => balance)).toEqual([
      -2911, 2911,
    ])
  })
})

describe('hours', () => {
  it('of fewer than four make a quarter more, where the group says so', () => {
    const rule = { kind: 'surcharge', leastMinutes: 240, percent: 25 } as const
    expect([239, 240, 0].map((minutes) => surchargePercent(rule, minutes))).toEqual([25, 0, 25])
    expect(surchargePercent({ kind: 'none' }, 0)).toBe(0)
  })

  it('are credited to the nearest cent', () => {
    const rule = { kind: 'credit', rate: 1250 } as const
    expect([60, 90, 100, 0].map((minutes) => creditForHours(rule, minutes))).toEqual([1250, 1875, 2083, 0]) // 20.83⅓
    expect(creditForHours({ kind: 'none' }, 600)).toBe(0)
  })
})
