import { z } from 'zod'
import { AGE_CLASSES, ROLES } from '@/shared/access/actor'
import { LIMITS, SKILLS } from '@/shared/kitchen/skills'
import { LANGUAGES } from '@/shared/people/languages'
import { optionalClock, Seen, someOf } from './choices'
import { Id, line, words } from './fields'

const personFields = {
  name: line(80, 'Say what neighbours call the person.'),
  ageClass: z.enum(AGE_CLASSES, 'Adult, 14 to 17, or under 14?').default('adult'),
  skills: someOf(SKILLS, 'Choose skills from the list.'),
  limits: someOf(LIMITS, 'Choose limits from the list.'),
  allergies: words,
  languages: someOf(LANGUAGES, 'Choose languages from the list.'),
  availableFrom: optionalClock,
  availableUntil: optionalClock,
}

interface Hours {
  readonly availableFrom: number | null
  readonly availableUntil: number | null
}

const untilAfterFrom = ({ availableFrom, availableUntil }: Hours) =>
  availableFrom === null || availableUntil === null ? availableFrom === availableUntil : availableFrom < availableUntil

const HOURS = { path: ['availableUntil'], message: 'Give both times, the second later than the first, or neither.' }

/** What the new-person form sends: somebody without an account, under a household. */
export const AddPerson = z
  .strictObject({ householdId: Id, role: z.enum(ROLES, 'Choose a role.').default('helper'), ...personFields })
  .refine(untilAfterFrom, HOURS)
export type AddPerson = z.infer<typeof AddPerson>

/** What the edit-person form sends. `householdId` moves the person to another household. */
export const EditPerson = z
  .strictObject({ personId: Id, seen: Seen, householdId: Id.optional(), ...personFields })
  .refine(untilAfterFrom, HOURS)
export type EditPerson = z.infer<typeof EditPerson>

/** What the role form sends. */
export const ChangePersonRole = z.strictObject({ personId: Id, role: z.enum(ROLES, 'Choose a role.') })
export type ChangePersonRole = z.infer<typeof ChangePersonRole>

/** What the "no longer here" and "here again" buttons send. */
export const SetPersonActive = z.strictObject({ personId: Id, active: z.enum(['yes', 'no'], 'Here, or no longer here?') })
export type SetPersonActive = z.infer<typeof SetPersonActive>
