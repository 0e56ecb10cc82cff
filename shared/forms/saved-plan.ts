import { z } from 'zod'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, METHODS, PACKS } from '@/shared/kitchen/methods'
import type { DayPlan } from '@/shared/planning/day-plan'
import { type DayProblem, LOCKED_TASKS } from '@/shared/planning/day-problem'

/** Plans are read back from the database as they were saved; a reader that does not know what it reads must say so, not guess. */

const Time = z.number().int()
const Minutes = z.number().int().min(0)
const Jars = z.object({ low: z.number(), typical: z.number(), high: z.number() })
const Words = z.array(z.string())

const Batch = z.object({
  id: z.string(),
  code: z.string(),
  preparationId: z.string(),
  multiple: z.number(),
  jars: Jars,
  kettleId: z.string(),
  cookStart: Time,
  cookEnd: Time,
  fillStart: Time,
  fillEnd: Time,
  taskIds: Words,
})

const Load = z.object({
  id: z.string(),
  code: z.string(),
  cannerId: z.string(),
  preparationId: z.string(),
  method: z.enum(METHODS),
  jarSize: z.enum(JAR_SIZES),
  batchParts: z.array(z.object({ batchId: z.string(), jars: Jars })),
  jarBoilAt: Time,
  loadAt: Time,
  heatAt: Time,
  ventAt: Time.nullable(),
  ventEndAt: Time.nullable(),
  boilAt: Time,
  processEndAt: Time,
  restEndAt: Time,
  emptyAt: Time,
  processMinutes: Minutes,
  psi: z.number().nullable(),
  source: z.string(),
  operatorId: z.string(),
  loaderId: z.string(),
  unloaderId: z.string(),
  latestLoadAt: Time,
})

const TASK_KINDS = [
  'brief',
  'soak',
  'preheat',
  'prep',
  'jar-heat',
  'cook',
  'hold',
  'fill',
  'load',
  'come-up',
  'process',
  'rest',
  'unload',
  'wash',
  'label',
  'clean-up',
  'break',
] as const

const Task = z.object({
  id: z.string(),
  kind: z.enum(TASK_KINDS),
  start: Time,
  end: Time,
  attention: z.enum(['hands-on', 'watch']),
  peopleIds: Words,
  kettleId: z.string().nullable(),
  burnerId: z.string().nullable(),
  cannerId: z.string().nullable(),
  tableIndex: z.number().nullable(),
  batchId: z.string().nullable(),
  loadId: z.string().nullable(),
})

const NightBefore = z.object({
  preparationId: z.string(),
  label: z.string(),
  hours: z.number(),
  startBy: Time,
  doneBy: Time,
  startAt: Time,
  endAt: Time,
  householdId: z.string(),
  batchIds: Words,
  proposed: z.boolean(),
})

const binding = { from: Time, slackMinutes: z.number() }
const Binding = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('canners'), method: z.enum(METHODS), cannerIds: Words, ...binding }),
  z.object({ kind: z.literal('kettle'), kettleIds: Words, ...binding }),
  z.object({ kind: z.literal('burners'), ...binding }),
  z.object({ kind: z.literal('people'), skill: z.string(), ...binding }),
  z.object({ kind: z.literal('first-load'), ...binding }),
])

const Shortage = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('jars'), preparationId: z.string(), wanted: z.number(), planned: Jars }),
  z.object({
    kind: z.literal('hands'),
    stage: z.enum(['wash', 'label', 'clean-up']),
    batchId: z.string().nullable(),
    minutes: z.number(),
  }),
  z.object({ kind: z.literal('language'), personId: z.string(), language: z.string(), taskIds: Words.optional() }),
  z.object({ kind: z.literal('break'), personId: z.string(), minutes: z.number() }),
])

const cannerMinutes = { needed: z.number(), available: z.number(), slack: z.number() }

/** A saved timetable, as it is read back. */
export const SavedDayPlan: z.ZodType<DayPlan> = z.object({
  dayId: z.string(),
  batches: z.array(Batch),
  loads: z.array(Load),
  tasks: z.array(Task),
  nightBefore: z.array(NightBefore),
  finishAt: Time,
  cleanUpEndAt: Time,
  cannerMinutes: z.object(cannerMinutes),
  cannerMinutesByMethod: z.array(z.object({ method: z.enum(METHODS), ...cannerMinutes })),
  lowerBound: Time,
  bindingReason: Binding,
  nextLimit: z
    .discriminatedUnion('kind', [
      z.object({ kind: z.enum(['burners', 'kettles', 'fill-tables']), slackMinutes: z.number() }),
      z.object({ kind: z.literal('people'), skill: z.string(), slackMinutes: z.number() }),
    ])
    .nullable()
    .optional(),
  criticalLoadIds: Words,
  shortages: z.array(Shortage),
  languageHelp: z.array(z.object({ taskId: z.string(), personId: z.string(), helperId: z.string() })).optional(),
  rule: z.string(),
})

const Window = z.object({
  accessAt: Time,
  peopleArriveAt: Time,
  briefingMinutes: Minutes,
  firstLoadAt: Time,
  cannersEmptyBy: Time,
  hardEnd: Time,
  cleanUpMinutes: Minutes,
  headcountLimit: z.number().nullable(),
})

const Kettle = z.object({
  id: z.string(),
  label: z.string(),
  litres: z.number(),
  material: z.string().nullable(),
  use: z.enum(['jam', 'brine', 'cook', 'jars', 'any']),
  washMinutes: z.number(),
})

const Canner = z.object({
  id: z.string(),
  label: z.string(),
  method: z.enum(METHODS),
  gauge: z.enum(GAUGES).nullable(),
  capacity: z.partialRecord(z.enum(JAR_SIZES), z.number()),
  usable: z.boolean(),
  whyNot: z.string().nullable(),
  preheatMinutes: z.number(),
})

const Burner = z.object({
  id: z.string(),
  label: z.string(),
  kind: z.enum(['gas', 'electric', 'portable-electric', 'outdoor-gas']),
  btuPerHour: z.number().nullable(),
  watts: z.number().nullable(),
  circuit: z.string().nullable(),
  forUses: z.array(z.enum(['canner', 'kettle', 'brine', 'jars'])).optional(),
})

const Person = z.object({
  id: z.string(),
  name: z.string(),
  householdId: z.string().nullable(),
  skills: Words,
  ageClass: z.enum(['adult', 'teen', 'child']),
  limits: z.array(z.enum(['no-lifting', 'seated', 'large-print'])),
  allergies: Words,
  languages: Words,
  from: Time,
  until: Time,
})

const Work = z.object({ workMinutes: z.number(), skills: Words, peopleMin: z.number(), peopleMax: z.number() })

const Cycle = z.object({
  loadMinutes: z.number(),
  comeUpMinutes: z.number(),
  ventMinutes: z.number(),
  pressuriseMinutes: z.number(),
  restMinutes: z.number(),
  waitMinutes: z.number(),
  unloadMinutes: z.number(),
})

const Range = z.object({ low: z.number(), typical: z.number(), high: z.number(), basis: z.enum(['published', 'common practice']) })

const Process = z.object({
  minutes: z.number(),
  publishedMinutes: z.number(),
  psi: z.number().nullable(),
  rowKey: z.string(),
  source: z.string(),
  sterilise: z.boolean(),
  chosenBecause: z.string().nullable(),
})

const Alternative = z.object({
  method: z.enum(METHODS),
  gauge: z.enum(GAUGES).nullable(),
  jarSize: z.enum(JAR_SIZES),
  process: Process,
  jarTreatment: z.enum(['washed-hot', 'boiled-in-canner', 'boiled-in-pot']),
  jarBoilMinutes: z.number(),
  cycle: Cycle,
  batchYield: Jars,
  fill: Work,
  wash: Work,
  label: Work,
})

const Preparation = z.object({
  id: z.string(),
  code: z.string(),
  title: z.string(),
  recipeId: z.string(),
  pattern: z.enum(['plum', 'dill', 'tomato', 'peach', 'bean']).optional(),
  method: z.enum(METHODS),
  pack: z.enum(PACKS),
  jarSize: z.enum(JAR_SIZES),
  jarsWanted: z.number(),
  spare: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('jars'), jars: z.number() }),
    z.object({ kind: z.literal('share'), share: z.number() }),
  ]),
  batchYield: Jars,
  scaling: z.enum(['whole-batches-only', 'to-kettle-volume']),
  batchLitres: z.number(),
  kettleUse: z.enum(['jam', 'brine', 'cook']),
  prepBefore: z.enum(['cook', 'fill']),
  prep: Work,
  cook: Work.extend({ attention: z.enum(['hands-on', 'watch']) }),
  fill: Work,
  wash: Work,
  label: Work,
  kettleMinutes: z.number(),
  cookedToFillingLimitMinutes: z.number(),
  filledToLoadedLimitMinutes: z.number(),
  leadSteps: z.array(
    z.object({
      label: z.string(),
      hours: z.number(),
      doneBy: Time.nullable(),
      batchesPerTub: z.number(),
      hostHouseholdIds: Words,
    }),
  ),
  allergens: Words,
  process: Process,
  jarTreatment: z.enum(['washed-hot', 'boiled-in-canner', 'boiled-in-pot']),
  jarBoilMinutes: z.number(),
  cycle: Cycle,
  onlyCannerIds: Words.optional(),
  loadBy: Time.optional(),
  alternatives: z.array(Alternative).optional(),
  ranges: z.object({ prep: Range.optional(), kettle: Range.optional(), comeUp: Range.optional() }).optional(),
  usualMinutes: z.object({ prep: z.number(), kettle: z.number(), comeUp: z.number() }).optional(),
})

/** A product without a process has nothing of a canner. */
const Chilled = Preparation.omit({
  ...{ method: true, pack: true, filledToLoadedLimitMinutes: true, process: true, cycle: true, onlyCannerIds: true, loadBy: true },
  ...{ alternatives: true, ranges: true, usualMinutes: true },
})

const Lock = z.object({
  preparationId: z.string(),
  batch: z.number(),
  task: z.enum(LOCKED_TASKS),
  at: Time.nullable(),
  equipmentId: z.string().nullable(),
  personId: z.string().nullable(),
})

/** What a saved timetable was made for, as it is read back. */
export const SavedDayProblem: z.ZodType<DayProblem> = z.object({
  dayId: z.string(),
  window: Window,
  kettles: z.array(Kettle),
  canners: z.array(Canner),
  burners: z.array(Burner),
  circuits: z.array(z.object({ id: z.string(), watts: z.number() })),
  rackJars: z.number().nullable(),
  fillTables: z.number(),
  tableWashMinutes: z.number().optional(),
  people: z.array(Person),
  households: z.array(z.object({ id: z.string(), name: z.string(), allergies: Words })),
  minding: z.array(
    z.object({
      method: z.enum(METHODS),
      skill: z.string(),
      cannersAtOnce: z.number(),
      alongside: z.enum(['kettles', 'nothing']),
    }),
  ),
  breaks: z.object({ longerThanMinutes: z.number(), minutes: z.number(), longestStretchMinutes: z.number() }).nullable().optional(),
  preparations: z.array(Preparation),
  chilled: z.array(Chilled).optional(),
  locks: z.array(Lock).optional(),
})
