import { z } from 'zod'
import { CalendarDate, ClockTime, Id, line, whole } from './fields'

/** How jars are shared when fewer seal than were asked for. */
export const SHARE_RULE_KINDS = ['in-proportion', 'one-each-first', 'equal', 'by-hours', 'by-produce', 'by-lot'] as const

/** A date and a time on the group's own clock, "2027-08-24T20:00", as a form's date-and-time entry sends it. */
export const LocalMoment = z
  .string('Choose a date and a time.')
  .trim()
  .regex(/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d$/, 'Type a date and a time like 2027-08-24T20:00.')
  .refine((text) => CalendarDate.safeParse(text.slice(0, 10)).success, 'Type a date that exists.')

const dayFields = {
  kitchenId: Id,
  name: line(80, 'Give the day a name.'),
  date: CalendarDate,
  accessAt: ClockTime,
  peopleArriveAt: ClockTime,
  briefingMinutes: whole(0, 240, 'How many minutes of briefing?'),
  firstLoadAt: ClockTime,
  cannersEmptyBy: ClockTime,
  cleanUpMinutes: whole(0, 480, 'How many minutes of clean-up?'),
  hardEnd: ClockTime,
  breakMinutes: whole(0, 120, 'How many minutes of break?').default(30),
  breakAfterMinutes: whole(60, 1440, 'After how many minutes there is a break due?').default(360),
  longestStretchMinutes: whole(60, 1440, 'How many minutes may anybody work on end?').default(300),
  tableWashMinutes: whole(0, 120, 'How many minutes to wash a fill table?').default(0),
  shareRule: z.enum(SHARE_RULE_KINDS, 'Choose a rule.').default('in-proportion'),
  sparePercent: whole(0, 100, 'How much spare, in percent?').default(10),
  claimsCloseAt: LocalMoment.optional(),
}

/** What the new-day form sends. Times are kitchen minutes once parsed. */
export const CreateDay = z.strictObject(dayFields)
export type CreateDay = z.infer<typeof CreateDay>

/** What the edit-day form sends: all of it again, and the version that the form was filled from. */
export const EditDay = z.strictObject({ dayId: Id, version: whole(1, 1_000_000, 'Load the page again.'), ...dayFields })
export type EditDay = z.infer<typeof EditDay>

/** A change that needs to know only which day. */
export const OneDay = z.strictObject({ dayId: Id })
export type OneDay = z.infer<typeof OneDay>

/** The house name of a planned change, as a form sends it: "fewer-batches:ID:5", "without-canner:ID". */
const PlanChangeText = z.string().regex(/^[a-z-]{1,40}(:[\w-]{1,64}){0,2}$/, 'Choose one from the list.')

/** What the plan form sends: the day, and at most one change to plan it with. */
export const PlanTheDay = z.strictObject({ dayId: Id, change: PlanChangeText.optional() })
export type PlanTheDay = z.infer<typeof PlanTheDay>
