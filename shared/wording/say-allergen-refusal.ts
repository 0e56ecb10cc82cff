import type { AvoidedAllergen } from '@/shared/day/who-avoids'
import type { Refusal } from '@/shared/wording/refusal'

/** Why a product is not for a household, in three parts. For that household and the organiser only: it may name a person. */
export const sayAllergenRefusal = (product: string, avoided: readonly AvoidedAllergen[]): Refusal => ({
  code: 'allergen',
  status: 409,
  what: `${product}: not for this household.`,
  why: `${sayContains(avoided)} ${avoided.map(sayList).join(' ')}`,
  instead: 'Ask for another product, or tell the organiser that the list is wrong.',
})

/** "They contain mustard and celery." */
const sayContains = (avoided: readonly AvoidedAllergen[]): string => `They contain ${joined(avoided.map(({ allergen }) => allergen))}.`

/** "Esme’s mustard allergy is on your list.", or the household's when nobody is named. */
export const sayList = ({ allergen, people }: AvoidedAllergen): string =>
  people.length > 0
    ? `${joined(people.map((name) => `${name}’s`))} ${allergen} allergy is on your list.`
    : `Your household’s list says no ${allergen}.`

const joined = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`
