import { z } from 'zod'
import { BURNER_KINDS, BURNER_USES, KETTLE_MATERIALS, KETTLE_USES } from '@/shared/kitchen/equipment'
import { GAUGES, METHODS } from '@/shared/kitchen/methods'
import { optionalNumber, Seen, someOf } from './choices'
import { CalendarDate, Id, line, optionalLine, typedNumber, whole } from './fields'

const label = line(40, 'Give it the name that stands on it.')

/** Empty while it is in use; otherwise why it is not. */
const outOfUse = optionalLine(120).transform((reason) => (reason === '' ? null : reason))

const burnerFields = {
  label,
  kind: z.enum(BURNER_KINDS, 'Gas or electric?'),
  btuPerHour: optionalNumber(500, 200_000, 'BTU per hour, as the plate on the stove says: 500 to 200,000.'),
  watts: optionalNumber(100, 20_000, 'Watts, as the plate says: 100 to 20,000.'),
  circuit: optionalLine(40),
  keptFor: someOf(BURNER_USES, 'Choose from the list.'),
  note: optionalLine(120),
  outOfUse,
}

interface Power {
  readonly kind: (typeof BURNER_KINDS)[number]
  readonly btuPerHour: number | null
  readonly watts: number | null
}

const gasIsRated = ({ kind, btuPerHour }: Power) => kind !== 'gas' || btuPerHour !== null
const GAS = { path: ['btuPerHour'], message: 'Say the BTU per hour: too strong a ring burns a pressure canner out.' }
const electricIsRated = ({ kind, watts }: Power) => kind === 'gas' || watts !== null
const ELECTRIC = { path: ['watts'], message: 'Say the watts: the circuit must carry them.' }

/** What the new-burner form sends. */
export const AddBurner = z
  .strictObject({ kitchenId: Id, ...burnerFields })
  .refine(gasIsRated, GAS)
  .refine(electricIsRated, ELECTRIC)
export type AddBurner = z.infer<typeof AddBurner>

/** What the edit-burner form sends. */
export const EditBurner = z
  .strictObject({ burnerId: Id, seen: Seen, ...burnerFields })
  .refine(gasIsRated, GAS)
  .refine(electricIsRated, ELECTRIC)
export type EditBurner = z.infer<typeof EditBurner>

const kettleFields = {
  label,
  litres: typedNumber('How many litres does it hold?').pipe(z.number().min(0.25, 'At least 0.25 litres.').max(500, 'At most 500 litres.')),
  material: z.enum(KETTLE_MATERIALS, 'What is it made of?'),
  keptFor: z.enum(KETTLE_USES, 'What is it kept for?').default('any'),
  outOfUse,
}

/** What the new-kettle form sends. */
export const AddKettle = z.strictObject({ kitchenId: Id, ...kettleFields })
export type AddKettle = z.infer<typeof AddKettle>

/** What the edit-kettle form sends. */
export const EditKettle = z.strictObject({ kettleId: Id, seen: Seen, ...kettleFields })
export type EditKettle = z.infer<typeof EditKettle>

const cannerFields = {
  label,
  method: z.enum(METHODS, 'Which kind of canner?'),
  gauge: z.enum(GAUGES, 'Dial or weighted?').nullable().default(null),
  gaugeTestedOn: CalendarDate.nullable().default(null),
  gaugeErrorPsi: optionalNumber(-20, 20, 'By how many psi does the dial read high? Minus when it reads low.'),
  halfPints: whole(0, 500, 'How many half-pints?').default(0),
  pints: whole(0, 500, 'How many pints?').default(0),
  quarts: whole(0, 500, 'How many quarts?').default(0),
  outOfUse,
}

interface CannerTyped {
  readonly method: (typeof METHODS)[number]
  readonly gauge: string | null
  readonly gaugeTestedOn: string | null
  readonly gaugeErrorPsi: number | null
  readonly halfPints: number
  readonly pints: number
  readonly quarts: number
}

const gaugeFits = ({ method, gauge }: CannerTyped) => (method === 'pressure') === (gauge !== null)
const GAUGE = { path: ['gauge'], message: 'A pressure canner has a dial or a weighted gauge; the others have none.' }
const testFits = ({ gauge, gaugeTestedOn, gaugeErrorPsi }: CannerTyped) =>
  gauge === 'dial' || (gaugeTestedOn === null && gaugeErrorPsi === null)
const TEST = { path: ['gaugeTestedOn'], message: 'Only a dial gauge is tested.' }
const holdsJars = ({ halfPints, pints, quarts }: CannerTyped) => halfPints + pints + quarts > 0
const HOLDS = { path: ['pints'], message: 'Say how many jars it holds, of one size at least.' }

/** What the new-canner form sends. */
export const AddCanner = z
  .strictObject({ kitchenId: Id, ...cannerFields })
  .refine(gaugeFits, GAUGE)
  .refine(testFits, TEST)
  .refine(holdsJars, HOLDS)
export type AddCanner = z.infer<typeof AddCanner>

/** What the edit-canner form sends. */
export const EditCanner = z
  .strictObject({ cannerId: Id, seen: Seen, ...cannerFields })
  .refine(gaugeFits, GAUGE)
  .refine(testFits, TEST)
  .refine(holdsJars, HOLDS)
export type EditCanner = z.infer<typeof EditCanner>
