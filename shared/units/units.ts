/** What a unit measures. Counts (pouches, cloves) convert to nothing else. */
export type Dimension = 'volume' | 'mass' | 'length' | 'pressure' | 'count'

type UnitDefinition = {
  readonly name: string
  readonly symbol: string
  readonly dimension: Dimension
  /** Base units (mL, g, mm, Pa) in one of this unit, as a fraction; exact unless `rounded`. */
  readonly factor: readonly [numerator: bigint, denominator: bigint]
  readonly rounded?: true
  readonly source: string
}

const HB44 = 'NIST Handbook 44, Appendix C'
const SP811 = 'NIST SP 811, Appendix B'
const SP430 = 'NIST SP 430, Household weights and measures'
const CFR = '21 CFR 101.9(b)(5)(viii)'
const CONVENTION = 'recipe convention'

/**
 * Every unit a quantity may be stored in. A cup has several meanings, so the id says which: a quantity without its id is no quantity.
 *
 * Sources of the exact factors: the inch of 25.4 mm, the pound of 453.59237 g and the gallon of 231 cubic inches
 * (NIST Handbook 44, Appendix C; NIST SP 811, Appendix B), the imperial gallon of 4.54609 L (NIST SP 811).
 */
export const UNITS = {
  mL: unit('millilitre', 'mL', 'volume', 1n, 1n, SP811),
  L: unit('litre', 'L', 'volume', 1000n, 1n, SP811),
  in3: unit('cubic inch', 'in³', 'volume', 2048383n, 125000n, HB44),
  'us-gal': unit('US gallon', 'gal', 'volume', 473176473n, 125000n, HB44),
  'us-qt': unit('US quart', 'qt', 'volume', 473176473n, 500000n, HB44),
  'us-pt': unit('US pint', 'pt', 'volume', 473176473n, 1000000n, HB44),
  'us-cup': unit('US cup', 'cup', 'volume', 473176473n, 2000000n, HB44),
  'us-half-pint': unit('US half-pint', 'half-pint', 'volume', 473176473n, 2000000n, HB44),
  'us-floz': unit('US fluid ounce', 'fl oz', 'volume', 473176473n, 16000000n, HB44),
  'us-tbsp': unit('US tablespoon', 'tbsp', 'volume', 473176473n, 32000000n, SP430),
  'us-tsp': unit('US teaspoon', 'tsp', 'volume', 157725491n, 32000000n, SP430),
  'us-dry-bu': unit('US bushel', 'bu', 'volume', 220244188543n, 6250000n, HB44),
  'us-peck': unit('US peck', 'peck', 'volume', 220244188543n, 25000000n, HB44),
  'us-dry-qt': unit('US dry quart', 'dry qt', 'volume', 220244188543n, 200000000n, HB44),
  'us-dry-pt': unit('US dry pint', 'dry pt', 'volume', 220244188543n, 400000000n, HB44),
  'imp-gal': unit('imperial gallon', 'imp gal', 'volume', 454609n, 100n, SP811),
  'imp-qt': unit('imperial quart', 'imp qt', 'volume', 454609n, 400n, SP811),
  'imp-pt': unit('imperial pint', 'imp pt', 'volume', 454609n, 800n, SP811),
  'imp-floz': unit('imperial fluid ounce', 'imp fl oz', 'volume', 454609n, 16000n, SP811),
  'imp-bu': unit('imperial bushel', 'imp bu', 'volume', 3636872n, 100n, SP811),
  'imp-cup': unit('imperial cup (half an imperial pint)', 'imp cup', 'volume', 454609n, 1600n, CONVENTION),
  'metric-cup': unit('metric cup', 'metric cup', 'volume', 250n, 1n, CONVENTION),
  'metric-tbsp': unit('metric tablespoon', 'metric tbsp', 'volume', 15n, 1n, CONVENTION),
  'metric-tsp': unit('metric teaspoon', 'metric tsp', 'volume', 5n, 1n, CONVENTION),
  'au-tbsp': unit('Australian tablespoon', 'AU tbsp', 'volume', 20n, 1n, CONVENTION),
  'us-label-cup': unit('cup on US nutrition labels', 'label cup', 'volume', 240n, 1n, CFR),
  'us-label-floz': unit('fluid ounce on US nutrition labels', 'label fl oz', 'volume', 30n, 1n, CFR),
  'us-label-tbsp': unit('tablespoon on US nutrition labels', 'label tbsp', 'volume', 15n, 1n, CFR),
  'us-label-tsp': unit('teaspoon on US nutrition labels', 'label tsp', 'volume', 5n, 1n, CFR),
  g: unit('gram', 'g', 'mass', 1n, 1n, SP811),
  kg: unit('kilogram', 'kg', 'mass', 1000n, 1n, SP811),
  lb: unit('pound', 'lb', 'mass', 45359237n, 100000n, SP811),
  oz: unit('ounce', 'oz', 'mass', 45359237n, 1600000n, SP811),
  'us-label-oz': unit('ounce weight on US nutrition labels', 'label oz', 'mass', 28n, 1n, CFR),
  mm: unit('millimetre', 'mm', 'length', 1n, 1n, SP811),
  m: unit('metre', 'm', 'length', 1000n, 1n, SP811),
  in: unit('inch', 'in.', 'length', 127n, 5n, SP811),
  ft: unit('foot', 'ft', 'length', 1524n, 5n, SP811),
  Pa: unit('pascal', 'Pa', 'pressure', 1n, 1n, SP811),
  hPa: unit('hectopascal', 'hPa', 'pressure', 100n, 1n, SP811),
  kPa: unit('kilopascal', 'kPa', 'pressure', 1000n, 1n, SP811),
  bar: unit('bar', 'bar', 'pressure', 100000n, 1n, SP811),
  atm: unit('standard atmosphere', 'atm', 'pressure', 101325n, 1n, SP811),
  psi: unit('pound-force per square inch', 'psi', 'pressure', 8896443230521n, 1290320000n, SP811),
  inHg: { ...unit('inch of mercury', 'inHg', 'pressure', 3386389n, 1000n, SP811), rounded: true },
  mmHg: { ...unit('millimetre of mercury', 'mmHg', 'pressure', 1333224n, 10000n, SP811), rounded: true },
  each: unit('piece', '', 'count', 1n, 1n, CONVENTION),
  pouch: unit('pouch', 'pouch', 'count', 1n, 1n, CONVENTION),
  clove: unit('clove', 'clove', 'count', 1n, 1n, CONVENTION),
  head: unit('head', 'head', 'count', 1n, 1n, CONVENTION),
  can: unit('12 oz can', '12 oz can', 'count', 1n, 1n, CONVENTION),
} as const satisfies Record<string, UnitDefinition>

/** The id that is stored with every amount. */
export type UnitId = keyof typeof UNITS

function unit<D extends Dimension>(name: string, symbol: string, dimension: D, numerator: bigint, denominator: bigint, source: string) {
  return { name, symbol, dimension, factor: [numerator, denominator], source } as const
}
