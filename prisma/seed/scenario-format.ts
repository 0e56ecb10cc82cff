import { z } from 'zod'

const Clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time like 18:02')
const Pounds = z.number().nonnegative()

const Window = z.object({
  access: Clock,
  people_arrive: Clock.optional(),
  briefing_min: z.number().int().nonnegative().optional(),
  earliest_first_load: Clock,
  last_canner_empty_by: Clock,
  clean_up_min: z.number().int().nonnegative().optional(),
  hard_end: Clock,
})

const Event = z.object({
  name: z.string(),
  neighbourhood: z.string(),
  kitchen: z.string(),
  elevation_ft: z.number(),
  headcount_limit: z.number().int(),
  date: z.iso.date().optional(),
  dates: z.array(z.iso.date()).min(1).optional(),
  day: z.record(z.string(), Window).optional(),
  ...Window.partial().shape,
})

const Burner = z.object({
  id: z.string(),
  type: z.enum(['gas', 'portable electric', 'electric', 'induction']),
  rated_btu_h: z.number().optional(),
  rated_w: z.number().optional(),
  note: z.string().optional(),
})

const Canner = z.object({
  id: z.string(),
  method: z.enum(['boiling_water', 'atmospheric_steam', 'pressure']),
  gauge: z.enum(['dial', 'weighted']).optional(),
  gauge_tested: z.iso.date().optional(),
  gauge_error_psi: z.number().nullable().optional(),
  capacity: z.object({ quart: z.number().int().optional(), pint: z.number().int().optional(), half_pint: z.number().int().optional() }),
})

const Person = z.object({
  id: z.string(),
  name: z.string(),
  household: z.string(),
  age: z.number().int(),
  skills: z.array(z.string()),
  languages: z.array(z.string()).default([]),
  limits: z.array(z.string()).default([]),
  allergies: z.array(z.string()).default([]),
  /** One stretch, or stretches by the short name of a day. */
  available: z.union([z.tuple([Clock, Clock]), z.array(z.tuple([z.string(), Clock, Clock]))]),
  minor: z.boolean().default(false),
})

const Recipe = z.object({
  id: z.string(),
  default_jar: z.enum(['half_pint', 'pint', 'quart']),
  pack: z.enum(['hot', 'raw']),
  method: z.enum(['boiling_water', 'atmospheric_steam', 'pressure']),
  batch: z.object({ yield: z.object({ low: z.number(), typical: z.number(), high: z.number() }) }).optional(),
})

const Purchase = z.object({
  item: z.string(),
  pack: z.union([z.string(), z.number()]),
  packs: z.number().positive(),
  cost: z.number().nonnegative(),
  paid_by: z.string().optional(),
  pool: z.string().optional(),
})

const Gift = z.object({
  household: z.string(),
  item: z.string(),
  lb: Pounds.optional(),
  credit_per_lb: z.number().nonnegative().optional(),
  credit: z.union([z.number().nonnegative(), z.boolean()]).optional(),
  pool: z.string().optional(),
})

const LidStock = z.object({
  lot: z.string(),
  size: z.string(),
  count: z.number().int(),
  bought: z.string().optional(),
  usable: z.boolean().optional(),
  why: z.string().optional(),
})

const Stock = z.object({
  jars: z.record(z.string(), z.number().int()).default({}),
  bands_regular: z.number().int().optional(),
  bands: z.record(z.string(), z.number().int()).optional(),
  lids: z.array(LidStock).default([]),
})

const Wish = z.object({ people: z.number().int() }).catchall(z.number().int())

/** One scenario: a group, its kitchen, its people and one canning day (or a weekend) as the file tells it. Facts the loader has no place for are left alone. */
export const Scenario = z.object({
  id: z.string(),
  title: z.string(),
  event: Event,
  kitchen: z.object({ burners: z.array(Burner), sinks: z.number().int().optional(), refrigerators: z.number().int().optional() }),
  canners: z.array(Canner),
  pots: z.array(z.object({ id: z.string(), litres: z.number().positive(), use: z.string() })).default([]),
  stock: Stock.default({ jars: {}, lids: [] }),
  recipes: z.array(Recipe),
  batches_planned: z.record(z.string(), z.number().int()).optional(),
  plan_targets: z.record(z.string(), z.object({ jars: z.number().int(), jar: z.string() })).optional(),
  targets: z.record(z.string(), z.object({ jars: z.number().int(), jar: z.string() })).optional(),
  demand: z.record(z.string(), Wish).optional(),
  households: z
    .record(
      z.string(),
      z.object({
        people: z.number().int(),
        language: z.string(),
        allergies: z.array(z.string()),
        wants: z.record(z.string(), z.number().int()),
      }),
    )
    .optional(),
  allergies: z.record(z.string(), z.array(z.string())).optional(),
  people: z.array(Person),
  purchases: z.array(Purchase).default([]),
  gifts_in_kind: z.array(Gift).default([]),
})
export type Scenario = z.infer<typeof Scenario>

/** A whole file: one scenario, or several under `scenarios`. */
export const ScenarioFile = z.union([
  z.object({ scenarios: z.array(z.unknown()).min(1) }),
  z.object({ id: z.string(), event: z.unknown() }),
])
