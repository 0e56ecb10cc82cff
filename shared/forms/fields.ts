import { z } from 'zod'

/** Ids are our own: short text of letters, digits, dashes; never an object that could reach a query. */
export const Id = z.string().regex(/^[\w-]{1,64}$/, 'Choose one from the list.')

/** One line of text, trimmed, without control or direction-changing characters. */
export const line = (longest: number, ask: string) =>
  z
    .string(ask)
    .trim()
    .min(1, ask)
    .max(longest, `At most ${longest} characters.`)
    .refine((text) => !/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u.test(text), 'Use plain text without control characters.')

/** A line that may be left empty. */
export const optionalLine = (longest: number) =>
  z
    .string()
    .trim()
    .max(longest, `At most ${longest} characters.`)
    .refine((text) => !/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u.test(text), 'Use plain text without control characters.')
    .default('')

/** A number from JSON, or its plain digits from a form. Nothing else becomes one: no null, no list, no empty text, no 9e9. */
export const plainNumber = (ask: string) =>
  z.union(
    [
      z.number(),
      z
        .string()
        .trim()
        .regex(/^-?\d{1,12}(\.\d{1,6})?$/)
        .transform(Number),
    ],
    ask,
  )

/**
 * A number from JSON, or digits from a form; with decimals after a point, perhaps with a sign.
 *
 * Nothing else counts: an empty text, null or a list is no 0, because a 0 that nobody typed is a guess.
 */
export const typedNumber = (ask: string) =>
  z.union(
    [
      z.number(),
      z
        .string()
        .trim()
        .regex(/^[+-]?(\d{1,15}(\.\d{0,15})?|\.\d{1,15})$/)
        .transform(Number),
    ],
    ask,
  )

/** A whole number from a form or from JSON. */
export const whole = (least: number, most: number, ask: string) =>
  typedNumber(ask).pipe(
    z
      .number(ask)
      .int(`${ask} Use a whole number.`)
      .min(least, `${ask} At least ${least}.`)
      .max(most, `${ask} At most ${most.toLocaleString('en-US')}.`),
  )

/** A time on the kitchen's clock, "18:02", as minutes after midnight. */
export const ClockTime = z
  .string('Type a time like 18:02.')
  .trim()
  .regex(/^([01]?\d|2[0-3]):[0-5]\d$/, 'Type a time like 18:02.')
  .transform((text) => {
    const [hours, minutes] = text.split(':')
    return Number(hours) * 60 + Number(minutes)
  })

/** A calendar date, "2027-08-26", that exists. */
export const CalendarDate = z.iso.date('Type a date like 2027-08-26.')

/** A short list of words, such as allergens or skills: lower case, no repeats, at most 20. */
export const words = z
  .union([z.string(), z.array(z.string())])
  .default([])
  .transform((typed) =>
    (Array.isArray(typed) ? typed : typed.split(',')).map((word) => word.trim().toLowerCase()).filter((word) => word !== ''),
  )
  .transform((list) => [...new Set(list)])
  .pipe(z.array(z.string().max(60, 'At most 60 characters a word.')).max(20, 'At most 20 words.'))
