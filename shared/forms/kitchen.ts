import { z } from 'zod'
import { wholeFeet } from '@/shared/process/elevation'
import { Seen } from './choices'
import { ClockTime, Id, line, optionalLine, typedNumber, whole } from './fields'

const ASK_ELEVATION = 'Say how high the kitchen lies. A survey map or the county knows it; nobody guesses it.'
const LOWEST_FEET = -1500
const HIGHEST_FEET = 20_000
const MINUTES_A_DAY = 1440

const kitchenFields = {
  name: line(60, 'Give the kitchen a name.'),
  elevation: typedNumber(ASK_ELEVATION),
  elevationUnit: z.enum(['ft', 'm'], 'Feet or metres?'),
  elevationSource: line(120, 'Say how that is known: a survey map, the county, a survey mark.'),
  opensAt: ClockTime,
  closesAt: ClockTime,
  headcountLimit: whole(1, 2000, 'How many people may be in it at once?'),
  rackJars: whole(0, 10_000, 'How many jars can stand and cool undisturbed, 1 in (25 mm) apart?'),
  fridges: whole(0, 100, 'How many fridges?').default(0),
  sinks: whole(0, 100, 'How many sinks?').default(1),
  fillTables: whole(1, 100, 'How many tables to fill at?').default(1),
  notes: optionalLine(500),
}

interface Typed {
  readonly elevation: number
  readonly elevationUnit: 'ft' | 'm'
  readonly opensAt: number
  readonly closesAt: number
}

const feetOf = ({ elevation, elevationUnit }: Typed) =>
  wholeFeet(elevationUnit === 'ft' ? { feet: elevation } : { metres: elevation }) ?? Number.NaN

const isOnLand = (typed: Typed) => feetOf(typed) >= LOWEST_FEET && feetOf(typed) <= HIGHEST_FEET
const ON_LAND = { path: ['elevation'], message: 'Between -1,500 ft (-457 m) and 20,000 ft (6,096 m): check the unit.' }

const hasHours = ({ opensAt, closesAt }: Typed) => opensAt !== closesAt
const HAS_HOURS = { path: ['closesAt'], message: 'It closes later than it opens; a time before the opening is the next morning.' }

/** Elevation as whole feet above sea level; a closing time before the opening becomes the next morning's. */
const settled = <Input extends Typed>(typed: Input) => {
  const { elevation: _, elevationUnit: __, ...rest } = typed
  const closesAt = typed.closesAt < typed.opensAt ? typed.closesAt + MINUTES_A_DAY : typed.closesAt
  return { ...rest, closesAt, elevationFeet: feetOf(typed) }
}

/** What the new-kitchen form sends. */
export const AddKitchen = z.strictObject(kitchenFields).refine(isOnLand, ON_LAND).refine(hasHours, HAS_HOURS).transform(settled)
export type AddKitchen = z.infer<typeof AddKitchen>

/** What the edit-kitchen form sends. */
export const EditKitchen = z
  .strictObject({ kitchenId: Id, seen: Seen, ...kitchenFields })
  .refine(isOnLand, ON_LAND)
  .refine(hasHours, HAS_HOURS)
  .transform(settled)
export type EditKitchen = z.infer<typeof EditKitchen>
