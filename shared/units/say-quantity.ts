import { convert } from './convert'
import { UNITS, type UnitId } from './units'

/** An amount with the unit it was written in. */
export type Quantity = { readonly amount: number; readonly unit: UnitId }

/** "2.5 lb (1.13 kg)": the unit as written, and the other system beside it. Counts stand alone. */
export function sayQuantity({ amount, unit }: Quantity): string {
  const own = `${round(amount)} ${UNITS[unit].symbol}`.trim()
  const other = otherSystem(amount, unit)
  return other === null ? own : `${own} (${other})`
}

const IMPERIAL_OF: Partial<Record<UnitId, UnitId>> = { g: 'oz', kg: 'lb', mL: 'us-floz', L: 'us-qt', mm: 'in', m: 'ft', kPa: 'psi' }

function otherSystem(amount: number, unit: UnitId): string | null {
  const customary = IMPERIAL_OF[unit]
  if (customary !== undefined) return inUnit(amount, unit, customary)
  switch (UNITS[unit].dimension) {
    case 'volume':
      return metric(amount, unit, 'mL', 'L')
    case 'mass':
      return metric(amount, unit, 'g', 'kg')
    case 'length':
      return metric(amount, unit, 'mm', 'm')
    case 'pressure':
      return inUnit(amount, unit, 'kPa')
    case 'count':
      return null
    default:
      return UNITS[unit] satisfies never
  }
}

function metric(amount: number, unit: UnitId, small: UnitId, large: UnitId): string | null {
  const inSmall = convert(amount, unit, small)
  return inUnit(amount, unit, inSmall.ok && inSmall.value >= 1000 ? large : small)
}

function inUnit(amount: number, from: UnitId, to: UnitId): string | null {
  const converted = convert(amount, from, to)
  return converted.ok ? `${round(converted.value)} ${UNITS[to].symbol}` : null
}

/** Three significant figures below 1,000, whole numbers above, no trailing zeros. */
const round = (value: number): string => String(Math.abs(value) >= 1000 ? Math.round(value) : Number(value.toPrecision(3)))
