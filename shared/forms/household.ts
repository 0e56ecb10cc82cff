import { z } from 'zod'
import { Id, line, optionalLine, whole, words } from './fields'

const householdFields = {
  name: line(60, 'Give the household a name.'),
  headcount: whole(1, 50, 'How many people?'),
  language: z.enum(['en', 'es'], 'Choose a language.').default('en'),
  contact: optionalLine(120),
  allergens: words,
}

/** What the new-household form sends. */
export const AddHousehold = z.strictObject(householdFields)
export type AddHousehold = z.infer<typeof AddHousehold>

/** What the edit-household form sends. */
export const EditHousehold = z.strictObject({ householdId: Id, ...householdFields })
export type EditHousehold = z.infer<typeof EditHousehold>
