import { UNITS, type UnitId } from './units'

const NAMES: ReadonlyMap<string, UnitId> = new Map(
  Object.entries<UnitId>({
    pound: 'lb',
    lbs: 'lb',
    ounce: 'oz',
    kilo: 'kg',
    gram: 'g',
    litre: 'L',
    liter: 'L',
    l: 'L',
    ml: 'mL',
    quart: 'us-qt',
    pint: 'us-pt',
    gallon: 'us-gal',
    cup: 'us-cup',
    tablespoon: 'us-tbsp',
    teaspoon: 'us-tsp',
    bushel: 'us-dry-bu',
    peck: 'us-peck',
    piece: 'each',
    jar: 'each',
  }),
)

/**
 * The unit somebody typed: its id, its symbol or its name, one or many. A plain "qt" or "cup" is the US one, "imp qt" and "metric cup" are told apart.
 *
 * @returns null when it names no unit of ours: "bag", "crate"
 */
export function readUnit(text: string): UnitId | null {
  const typed = text.trim().replace(/\.$/, '')
  if (Object.hasOwn(UNITS, typed)) return typed as UnitId
  const lower = typed.toLowerCase()
  const bySymbol = (Object.keys(UNITS) as UnitId[]).find((id) => UNITS[id].symbol !== '' && UNITS[id].symbol.toLowerCase() === lower)
  if (bySymbol) return bySymbol
  return (
    NAMES.get(lower) ??
    NAMES.get(lower.replace(/s$/, '')) ??
    (Object.keys(UNITS) as UnitId[]).find((id) => singular(lower) === UNITS[id].name.toLowerCase()) ??
    null
  )
}

const singular = (text: string) => text.replace(/(?:(?<=ch)es|s)$/, '')
