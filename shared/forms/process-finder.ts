import { z } from 'zod'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, METHODS, PACKS } from '@/shared/kitchen/methods'
import { UNSAFE_METHODS } from '@/shared/process/process-query'
import { orEmpty } from './or-empty'

const ELEVATION_ASK = 'Type the elevation as a number, such as 650.'

/** "650", "1,000", "198.1" or "-12"; a comma only parts thousands. */
const Elevation = z
  .string(ELEVATION_ASK)
  .trim()
  .regex(/^-?(\d{1,6}|\d{1,3},\d{3})(\.\d{1,3})?$/, ELEVATION_ASK)
  .transform((typed) => Number(typed.replace(',', '')))

const ticked = orEmpty(z.literal('yes', 'Tick it or leave it.'))

/** A question to the process finder, as its form or a link sends it. Everything may be missing: what is missing is asked for. */
export const ProcessFinder = z
  .strictObject({
    food: orEmpty(
      z
        .string('Type one food.')
        .trim()
        .max(120, 'At most 120 characters.')
        .refine((text) => !/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u.test(text), 'Use plain text without control characters.'),
    ),
    pack: orEmpty(z.enum(PACKS, 'Choose hot pack or raw pack.')),
    jar: orEmpty(z.enum(JAR_SIZES, 'Choose a jar from the list.')),
    method: orEmpty(z.enum([...METHODS, ...UNSAFE_METHODS], 'Choose a canner from the list.')),
    gauge: orEmpty(z.enum(GAUGES, 'Choose dial gauge or weighted gauge.')),
    elevation: orEmpty(Elevation),
    unit: orEmpty(z.enum(['ft', 'm'], 'Choose feet or metres.')),
    option: orEmpty(
      z
        .string('Choose a pressure from the list.')
        .regex(/^[1-9]$/, 'Choose a pressure from the list.')
        .transform(Number),
    ),
    thickened: ticked,
    doubled: ticked,
    aluminium: ticked,
    /** The question is to be changed before it is answered: its form is shown, filled in. */
    again: ticked,
  })
  .refine(({ elevation, unit }) => elevation === undefined || unit !== undefined, {
    error: 'Say whether that is feet or metres.',
    path: ['unit'],
  })
export type ProcessFinder = z.infer<typeof ProcessFinder>

/** The names that a question may use. */
export const FINDER_FIELDS = Object.keys(ProcessFinder.shape) as FinderField[]
export type FinderField = keyof typeof ProcessFinder.shape
