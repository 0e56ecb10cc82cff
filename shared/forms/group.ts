import { z } from 'zod'
import { Seen } from './choices'
import { line, whole } from './fields'

/** Currencies that a group may count in (ISO 4217): most of two decimals, then those of none, then those of three. */
export const CURRENCIES = [
  ...(['USD', 'CAD', 'EUR', 'GBP', 'AUD', 'NZD', 'MXN', 'CHF', 'SEK', 'NOK', 'DKK', 'PLN', 'CZK', 'RON', 'ZAR'] as const),
  ...(['BRL', 'GEL', 'HKD', 'ILS', 'INR', 'KES', 'MAD', 'MYR', 'PEN', 'PHP', 'SGD', 'THB', 'TRY', 'UAH'] as const),
  ...(['CLP', 'ISK', 'JPY', 'KRW', 'VND', 'XAF', 'XOF'] as const),
  ...(['BHD', 'JOD', 'KWD', 'OMR', 'TND'] as const),
] as const

/** True for a name of the IANA time zone database that this machine knows. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name })
    return /^[A-Z]\w+(\/[\w+-]+)*$/.test(name)
  } catch {
    return false
  }
}

const groupFields = {
  name: line(60, 'Give the group a name.'),
  timeZone: z.string('Choose the time zone of the kitchen.').max(64, 'Choose from the list.').refine(isTimeZone, 'Choose from the list.'),
  currency: z.enum(CURRENCIES, 'Choose a currency.').default('USD'),
  askLine: line(160, 'Say how anybody who holds a jar reaches you.'),
}

/** What the new-group form sends. */
export const CreateGroup = z.strictObject({
  ...groupFields,
  code: z
    .string('Choose two to four letters.')
    .trim()
    .toUpperCase()
    .regex(/^[A-HJ-NP-Z]{2,4}$/, 'Two to four letters, without I and O, which look like numbers.'),
  personName: line(80, 'Say what neighbours call you.'),
  householdName: line(60, 'Give your household a name.'),
  headcount: whole(1, 50, 'How many people live in it?'),
})
export type CreateGroup = z.infer<typeof CreateGroup>

/** What the edit-group form sends. The code never changes: it begins every lot number. A currency that is left out stays. */
export const EditGroup = z.strictObject({ seen: Seen, ...groupFields, currency: z.enum(CURRENCIES, 'Choose a currency.').optional() })
export type EditGroup = z.infer<typeof EditGroup>
