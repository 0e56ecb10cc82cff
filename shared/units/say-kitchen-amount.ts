import { convert } from './convert'
import { UNITS, type UnitId } from './units'

/** A number, or a printed range of them. */
export type KitchenAmount = number | { readonly low: number; readonly high: number }

/**
 * "2¼ cups (532 mL)", "4 to 4½ cups (946 mL to 1.06 L)", "14 heads": as a recipe says it, and rounded in the other system beside it.
 *
 * Quarters, thirds and eighths are said as fractions; other numbers keep three figures. A count has no other system.
 */
export function sayKitchenAmount(amount: KitchenAmount, unit: UnitId): string {
  const [low, high] = typeof amount === 'number' ? [amount, amount] : [amount.low, amount.high]
  const own = `${range(sayNumber(low), sayNumber(high))} ${nameOf(unit, high)}`.trim()
  const metric = range(inOtherSystem(low, unit), inOtherSystem(high, unit))
  return metric === '' ? own : `${own} (${metric})`
}

/** "½", "2¼", "1 1/3", "17.5": a number as kitchens write it. */
export function sayNumber(value: number): string {
  const whole = Math.floor(value + EDGE)
  const rest = value - whole
  const fraction = FRACTIONS.find(([size]) => Math.abs(size - rest) < EDGE)?.[1]
  if (Math.abs(rest) < EDGE) return whole.toLocaleString('en-US')
  if (fraction === undefined) return String(Number(value.toPrecision(3)))
  if (whole === 0) return fraction
  return fraction.length === 1 ? `${whole}${fraction}` : `${whole} ${fraction}`
}

const EDGE = 1e-6

const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 8, '1/8'],
  [1 / 4, '¼'],
  [1 / 3, '1/3'],
  [1 / 2, '½'],
  [2 / 3, '2/3'],
  [3 / 4, '¾'],
]

const range = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`)

const PLURALS: Partial<Record<UnitId, string>> = {
  'us-cup': 'cups',
  pouch: 'pouches',
  clove: 'cloves',
  head: 'heads',
  can: '12 oz cans',
}

const nameOf = (unit: UnitId, amount: number): string => (amount > 1 ? PLURALS[unit] : undefined) ?? UNITS[unit].symbol

/** Metric for US and imperial units, pounds, quarts and inches for metric ones; empty for a count. */
function inOtherSystem(amount: number, unit: UnitId): string {
  switch (UNITS[unit].dimension) {
    case 'volume':
      return unit === 'L' || unit === 'mL' ? inUnit(amount, unit, 'us-qt') : inSmallOrLarge(amount, unit, 'mL', 'L')
    case 'mass':
      return unit === 'kg' || unit === 'g' ? inUnit(amount, unit, 'lb') : inSmallOrLarge(amount, unit, 'g', 'kg')
    case 'length':
      return unit === 'mm' || unit === 'm' ? inUnit(amount, unit, 'in') : inSmallOrLarge(amount, unit, 'mm', 'm')
    default:
      return ''
  }
}

function inSmallOrLarge(amount: number, from: UnitId, small: UnitId, large: UnitId): string {
  const inSmall = convert(amount, from, small)
  return inUnit(amount, from, inSmall.ok && inSmall.value >= 1000 ? large : small)
}

function inUnit(amount: number, from: UnitId, to: UnitId): string {
  const converted = convert(amount, from, to)
  return converted.ok ? `${rounded(converted.value, to)} ${UNITS[to].symbol}` : ''
}

/** As a kitchen scale or jug shows it: small units whole from 10 on, with a tenth below; large units with three figures. */
function rounded(value: number, unit: UnitId): string {
  const isSmall = unit === 'mL' || unit === 'g' || unit === 'mm'
  if (isSmall) return String(value >= 10 ? Math.round(value) : Math.round(value * 10) / 10)
  return String(Number(value.toPrecision(3)))
}
