import { z } from 'zod'
import { ClockTime, typedNumber } from './fields'

/** Several of a closed list: from a form a list or one text, from JSON a list. Repeats are dropped. */
export const someOf = <const Values extends readonly [string, ...string[]]>(values: Values, ask: string) =>
  z
    .union([z.string(), z.array(z.string())], ask)
    .default([])
    .transform((typed) => [...new Set(Array.isArray(typed) ? typed : [typed])])
    .pipe(z.array(z.enum(values, ask)).max(values.length, ask))

/** A time on the clock that may be left empty. */
export const optionalClock = ClockTime.nullable().default(null)

/** What the form was filled with when it was opened: when it has changed since, somebody else was quicker and is not overwritten. */
export const Seen = z
  .string()
  .regex(/^[0-9a-f]{16}$/, 'Load the page again.')
  .optional()

/** A number with decimals from a form or from JSON; empty and absent are null, never 0. */
export const optionalNumber = (least: number, most: number, ask: string) =>
  z
    .union([z.literal('').transform(() => null), z.null(), typedNumber(ask).pipe(z.number(ask).min(least, ask).max(most, ask))], ask)
    .default(null)
