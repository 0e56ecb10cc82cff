import type { CannerLoadWeight } from '@/shared/recipes/canner-load-weights'
import { convert } from '@/shared/units/convert'
import type { UnitId } from '@/shared/units/units'

/**
 * What a produce is called in short, so that "canning tomatoes" of a promise and "slicing tomatoes" of a recipe are the same thing: the
 * last word before a comma, a bracket or "in", in its singular, with the kind in front where the kind is another food (green tomato,
 * lima bean).
 *
 * @returns null for a mixture ("plums and grapes"), which no single delivery stands for
 */
export function produceKey(text: string): string | null {
  const name = (text.toLowerCase().split(/,|\(| in | for | from /)[0] ?? '').trim()
  if (/ (?:and|or) |&|\//.test(name)) return null
  const words = name.split(/[^\p{L}]+/u).filter((word) => word !== '')
  const noun = singular(words.at(-1) ?? '')
  if (noun === '') return null
  const kind = words.slice(0, -1).find((word) => OTHER_KINDS[noun]?.includes(word))
  return kind === undefined ? noun : `${kind} ${noun}`
}

/** Kinds that are another food than the bare noun. */
const OTHER_KINDS: Readonly<Record<string, readonly string[]>> = {
  bean: ['lima', 'butter', 'dry', 'dried'],
  pea: ['dry', 'dried'],
  potato: ['sweet'],
  tomato: ['green'],
}

function singular(word: string): string {
  if (/.{2}ies$/.test(word)) return `${word.slice(0, -3)}y`
  if (/(?:oes|shes|ches)$/.test(word)) return word.slice(0, -2)
  return /[^s]s$/.test(word) ? word.slice(0, -1) : word
}

/** Words for a weight, as people type them. */
const WEIGHTS: Readonly<Record<string, UnitId>> = {
  lb: 'lb',
  lbs: 'lb',
  pound: 'lb',
  pounds: 'lb',
  oz: 'oz',
  ounce: 'oz',
  ounces: 'oz',
  g: 'g',
  gram: 'g',
  grams: 'g',
  kg: 'kg',
  kilo: 'kg',
  kilos: 'kg',
  kilogram: 'kg',
  kilograms: 'kg',
}

/**
 * Pounds of a quantity as it was typed: a weight ("lb", "kg"), a pack that says its weight ("25 lb box") or the field unit that the
 * publication prints for this produce ("bushel").
 *
 * @returns null for a unit that names no weight, such as "box": nothing is guessed
 */
export function poundsOf(quantity: number, unit: string, weights?: CannerLoadWeight): number | null {
  const words = unit.trim().toLowerCase().replace(/\.$/, '')
  const weight = WEIGHTS[words]
  if (weight !== undefined) return inPounds(quantity, weight)

  const pack = /(\d+(?:\.\d+)?) ?([a-z]+)/.exec(words)
  const packWeight = WEIGHTS[pack?.[2] ?? '']
  if (packWeight !== undefined) return inPounds(quantity * Number(pack?.[1]), packWeight)

  const field = weights?.fieldUnit
  return field && singular(words === 'bu' ? 'bushel' : words) === field.name ? quantity * field.pounds : null
}

function inPounds(quantity: number, unit: UnitId): number {
  const pounds = convert(quantity, unit, 'lb')
  return pounds.ok ? pounds.value : 0
}
