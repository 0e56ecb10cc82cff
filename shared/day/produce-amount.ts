import type { CannerLoadWeight } from '@/shared/recipes/canner-load-weights'
import { convert } from '@/shared/units/convert'
import { readUnit } from '@/shared/units/read-unit'

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
  const kind = words.slice(0, -1).find((word) => OTHER_KINDS.get(noun)?.includes(word))
  return kind === undefined ? noun : `${kind} ${noun}`
}

/** Kinds that are another food than the bare noun. */
const OTHER_KINDS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    bean: ['lima', 'butter', 'dry', 'dried'],
    pea: ['dry', 'dried'],
    potato: ['sweet'],
    tomato: ['green'],
  }),
)

function singular(word: string): string {
  if (/.{2}ies$/.test(word)) return `${word.slice(0, -3)}y`
  if (/(?:oes|shes|ches)$/.test(word)) return word.slice(0, -2)
  return /[^s]s$/.test(word) ? word.slice(0, -1) : word
}

/**
 * Pounds of a quantity as it was typed: a weight ("lb", "kg"), a pack that says its weight ("25 lb box") or the field unit that the
 * publication prints for this produce ("bushel").
 *
 * @returns null for a unit that names no weight, such as "box": nothing is guessed
 */
export function poundsOf(quantity: number, unit: string, weights?: CannerLoadWeight): number | null {
  const whole = inPounds(quantity, unit)
  if (whole !== null) return whole

  const words = unit.trim().toLowerCase().replace(/\.$/, '')
  const pack = /(\d+(?:\.\d+)?) ?([a-z]+)/.exec(words)
  const inPack = pack && inPounds(quantity * Number(pack[1]), String(pack[2]))
  if (inPack !== null) return inPack

  const field = weights?.fieldUnit
  return field && (singular(words) === field.name || isSameUnit(words, field.name)) ? quantity * field.pounds : null
}

/** "bu" and "bushels" for a bushel. */
const isSameUnit = (one: string, other: string): boolean => readUnit(one) !== null && readUnit(one) === readUnit(other)

/** Null where the word is no unit of weight. */
function inPounds(quantity: number, word: string): number | null {
  const unit = readUnit(word)
  const pounds = unit && convert(quantity, unit, 'lb')
  return pounds?.ok ? pounds.value : null
}
