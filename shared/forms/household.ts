import { z } from 'zod'
import { LANGUAGES } from '@/shared/people/languages'
import { Seen } from './choices'
import { Id, line, optionalLine, whole, words } from './fields'

const householdFields = {
  name: line(60, 'Give the household a name.'),
  headcount: whole(1, 50, 'How many people?'),
  language: z.enum(LANGUAGES, 'Choose a language.').default('en'),
  contact: optionalLine(120),
  allergens: words,
}

/** What the new-household form sends. */
export const AddHousehold = z.strictObject(householdFields)
export type AddHousehold = z.infer<typeof AddHousehold>

/** What the edit-household form sends. */
export const EditHousehold = z.strictObject({ householdId: Id, seen: Seen, ...householdFields })
export type EditHousehold = z.infer<typeof EditHousehold>

/** What the household-leaves form sends. */
export const RemoveHousehold = z.strictObject({ householdId: Id })
export type RemoveHousehold = z.infer<typeof RemoveHousehold>
