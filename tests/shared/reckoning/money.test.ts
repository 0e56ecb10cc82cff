import { describe, expect, it } from 'vitest'
import { CURRENCIES } from '@/shared/forms/group'
import { EQUIPMENT_YEARS, equipmentCharge } from '@/shared/reckoning/equipment-charge'
import { askForAmount, currencyDigits, formatMoney, parseMoney, plainMoney } from '@/shared/reckoning/money'

describe('an amount of money', () => {
  it.each([
    ['12.50', 'USD', 1250],
    ['12,5', 'EUR', 1250],
    ['.05', 'USD', 5],
    [' 7 ', 'USD', 700],
    ['1200', 'JPY', 1200],
    ['1.250', 'KWD', 1250],
    ['1,25', 'KWD', 1250],
    ['2', 'KWD', 2000],
    ['0', 'USD', 0],
  ])('is read from %j %s', (text, currency, minor) => {
    expect(parseMoney(text, currency)).toEqual({ ok: true, value: minor })
  })

  it.each([
    ['', 'USD', 'not-an-amount'],
    ['-1', 'USD', 'not-an-amount'],
    ['1e308', 'USD', 'not-an-amount'],
    ['1,200.00', 'USD', 'not-an-amount'],
    ['NaN', 'USD', 'not-an-amount'],
    ['1.005', 'USD', 'too-fine'],
    ['1,200', 'USD', 'too-fine'],
    ['1.5', 'JPY', 'too-fine'],
    ['99999999999999999999', 'USD', 'amount-out-of-range'],
    ['1000000001', 'USD', 'amount-out-of-range'],
    ['1,250', 'KWD', 'not-an-amount'],
    ['1.2505', 'KWD', 'too-fine'],
    ['1', 'usd', 'not-a-currency'],
  ])('is refused from %j %s: %s', (text, currency, kind) => {
    expect(parseMoney(text, currency)).toMatchObject({ ok: false, problem: { kind } })
  })

  it('is written with the digits of its currency', () => {
    expect(formatMoney(1250, 'USD')).toBe('$12.50')
    expect(formatMoney(-5, 'USD')).toBe('-$0.05')
    expect(formatMoney(1200, 'JPY')).toBe('¥1,200')
    expect(plainMoney(1, 'USD')).toBe('0.01')
    expect(plainMoney(1250, 'KWD')).toBe('1.250')
  })
})

describe('the currencies of groups', () => {
  it.each(CURRENCIES)('%s is read back as it is written, and says how to type it', (currency) => {
    const digits = currencyDigits(currency)
    expect([0, 2, 3]).toContain(digits)
    expect(parseMoney(plainMoney(1234567, currency), currency)).toEqual({ ok: true, value: 1234567 })
    const asked = askForAmount(18, currency)
    const [, example = ''] = /like (\S+), in/.exec(asked) ?? []
    expect(parseMoney(example, currency)).toEqual({ ok: true, value: 18 * 10 ** digits })
    expect(asked).toContain(`in ${currency}.`)
  })

  it('are of none, two and three digits', () => {
    expect(askForAmount(3.6, 'JPY')).toBe('Type an amount like 4, in JPY.')
    expect(askForAmount(3.6, 'USD')).toBe('Type an amount like 3.60, in USD.')
    expect(askForAmount(3.6, 'KWD')).toBe('Type an amount like 3.600, in KWD.')
  })
})

describe('equipment', () => {
  it('is carried over its years and days, rounded up', () => {
    expect(equipmentCharge(9000, EQUIPMENT_YEARS.canner, 3)).toBe(150)
    expect(equipmentCharge(100, EQUIPMENT_YEARS.jars, 3)).toBe(4)
    expect(() => equipmentCharge(100, 0, 3)).toThrow(RangeError)
  })
})
