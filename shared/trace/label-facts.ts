import { type JarSize, JAR_MILLILITRES, jarName } from '@/shared/kitchen/jar-sizes'
import { formatSerial } from '@/shared/trace/jar-serial'

/** How the spine of a label is filled: a pattern for the food, so that jars are told apart without colour. */
export type ProducePattern = 'solid' | 'hatch' | 'dots' | 'bars' | 'cross' | 'plain'

/** What a label is made from. Texts may come from anywhere and are cleaned before they are printed. */
export interface LabelFacts {
  readonly product: string
  readonly size: JarSize
  readonly pattern: ProducePattern
  readonly allergens: readonly string[]
  /** The day it was canned, `2027-08-26`. */
  readonly cannedOn: string
  /** What it had: "Boiling water, 10 min, 650 ft (198 m)"; empty for a jar that is kept cold. */
  readonly process: string
  /** No process: the label says that it is kept cold, has no best-by month and no sunk lid. */
  readonly isCold?: boolean
  readonly lotNumber: string
  /** The stored serial, without dashes. */
  readonly serial: string
  /** "D3-01". */
  readonly jarLabel: string
  readonly group: string
  /** Where jar pages are: `https://jars.example`, no slash at the end. */
  readonly origin: string
  /** A line that the group has to or wants to print, such as a notice its state asks for. This product does not know what the law asks. */
  readonly notice?: string
}

/**
 * Months that home-canned food is kept for best quality.
 *
 * Source: University of California Agriculture and Natural Resources, Master Food Preserver Program, Canning (no more than 12 months, 50 to 70 °F).
 */
export const BEST_BY_MONTHS = 12

/**
 * How to keep a sealed jar.
 *
 * Source: the same page for 50 to 70 °F; Michigan State University Extension, Preserving Food Safely (1997), reproducing USDA AIB No. 539, Storing home
 * canned foods, for clean, cool, dark and dry.
 */
export const STORAGE_LINE = 'Keep cool, dark, dry: 50–70 °F (10–21 °C).'

/**
 * What to do with a jar that looks wrong.
 *
 * Source: USDA Complete Guide to Home Canning, AIB No. 539, Identifying and handling spoiled canned food (never taste food from a jar with an
 * unsealed lid or signs of spoilage).
 */
export const SPOILAGE_LINE = 'Lid domed or leaking? Do not taste.'

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** "26 Aug 2027". */
export function sayDate(date: string): string {
  const [year, month, day] = date.split('-').map(Number)
  return `${day} ${MONTHS[Number(month) - 1]} ${year}`
}

/** "Aug 2028": the month until which a jar is at its best, {@link BEST_BY_MONTHS} after the day it was canned. */
export function sayBestBy(cannedOn: string): string {
  const [year, month] = cannedOn.split('-').map(Number)
  const months = Number(year) * 12 + (Number(month) - 1) + BEST_BY_MONTHS
  return `${MONTHS[months % 12]} ${Math.floor(months / 12)}`
}

/** "1 pint" and "473 mL"; "12 oz jar" needs no number before it. */
export function sayJarSize(size: JarSize): readonly [name: string, volume: string] {
  const name = jarName(size)
  return [/^\d/.test(name) ? name : `1 ${name}`, `${JAR_MILLILITRES[size]} mL`]
}

/** "Contains mustard", "Contains celery, milk and mustard"; nothing when there is nothing to say. */
export function sayAllergens(allergens: readonly string[]): string {
  const named = allergens.map(cleanLabelText).filter((allergen) => allergen !== '')
  const last = named.at(-1)
  if (last === undefined) return ''
  return `Contains ${named.length > 1 ? `${named.slice(0, -1).join(', ')} and ${last}` : last}`
}

/** The address of a jar's page, as the QR code carries it. */
export const jarAddress = (origin: string, serial: string): string => `${origin}/j/${serial}`

/** The same address to read and type: without its scheme, the serial in groups. */
export const sayJarAddress = (origin: string, serial: string): string => `${origin.replace(/^https?:\/\//, '')}/j/${formatSerial(serial)}`

const MOST_CHARACTERS = 200

/**
 * A text as it may be printed: composed, without control, formatting and unassigned characters (the ones that turn writing round are among them), runs
 * of spaces as one space, at most 200 characters.
 */
export function cleanLabelText(text: string): string {
  const clean = text
    .normalize('NFC')
    .replace(/(?!\s)\p{C}/gu, '')
    .replace(/\s+/gu, ' ')
    .trim()
  return [...clean].slice(0, MOST_CHARACTERS).join('').trim()
}
