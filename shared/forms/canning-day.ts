import { z } from 'zod'
import { ok, type Result, refuse } from '@/shared/result/result'
import { type CanningDay, CREW_SKILLS } from '@/shared/scheduling/day/canning-day'
import type { FileProblem } from '@/shared/scheduling/file-problem'

/** Kettle batches one day may hold; more is a slip of the keyboard or a file of another kind. */
export const MOST_BATCHES = 5_000

/** Steps of the grid from opening to closing; a longer day, or a finer grid, is a slip. */
export const MOST_SLOTS = 3_000

const Id = z.string().min(1).max(80)
const Count = z.number().int().min(0).max(1_000_000)
const Some = z.number().int().min(1).max(1_000_000)
const Minutes = z.number().int().min(0).max(100_000)
const Method = z.enum(['boiling-water', 'pressure'])
const Skill = z.enum(CREW_SKILLS)

const Batch = z.object({
  id: Id,
  recipe: Id,
  ml: Some,
  jars: Some,
  readyAt: Minutes,
  prep: z.object({ work: z.number().min(0).max(100_000), skill: Skill, peopleMin: Some, peopleMax: Some.max(200) }),
  maxWaitPrepCook: Minutes.nullable(),
  cook: z.object({ low: Minutes, minutes: Minutes, high: Minutes }),
  maxWaitCookFill: Minutes,
  fill: z.object({ minutes: Minutes, people: Count, skill: Skill }),
  kettleTurn: Minutes,
  trays: z.array(Some).min(1).max(500),
  maxWaitFillProcess: Minutes,
})

/** The shape of a `canning-day/1` file. What the parts mean together is checked by `parseCanningDay`. */
const Shape = z.object({
  format: z.literal('canning-day/1'),
  id: Id,
  grid: Some.max(240),
  close: Minutes.min(1),
  jarSizes: z.array(z.object({ id: Id, ml: Some })),
  kettles: z.array(z.object({ id: Id, ml: Some })),
  burners: Count,
  stoveWatch: Count,
  prepPlaces: Count,
  fillStations: Count,
  canners: z.array(z.object({ id: Id, method: Method, jars: z.record(z.string(), Count) })),
  operators: z.array(z.object({ id: Id, from: Minutes, to: Minutes, maxCanners: Count })),
  crews: z.array(
    z.object({
      id: Id,
      people: z.array(Id),
      from: Minutes,
      to: Minutes,
      skills: z.array(Skill),
      break: z.object({ minutes: Minutes, startMin: Minutes, startMax: Minutes }).nullable(),
    }),
  ),
  handling: z.object({ loadMinutes: Minutes, unloadMinutes: Minutes, people: Count, skill: Skill }),
  families: z.array(z.object({ id: Id, method: Method, jarSize: Id, heatMinutes: Minutes, processMinutes: Minutes, restMinutes: Minutes })),
  recipes: z.array(z.object({ id: Id, name: z.string(), family: Id, maxBatchMl: Some.nullable(), demandJars: Count })),
  batches: z.array(Batch).min(1).max(MOST_BATCHES),
  coolingJars: Count,
})

/** Reads a `canning-day/1` file: its shape, its references and its order of times. The first fault found is named. */
export function parseCanningDay(input: unknown): Result<CanningDay, FileProblem> {
  const parsed = Shape.safeParse(input)
  if (!parsed.success) {
    const [issue] = parsed.error.issues
    return refuse({ field: pathOf(issue?.path ?? []), message: issue?.message ?? 'not as described' })
  }
  const day: CanningDay = parsed.data
  const fault = [...duplicates(day), ...unknownNames(day), ...times(day), ...idle(day)][0]
  return fault ? refuse(fault) : ok(day)
}

const pathOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => (typeof key === 'number' ? `${text}[${key}]` : `${text}${text ? '.' : ''}${String(key)}`), '') ||
  'the file'

function duplicates(day: CanningDay): FileProblem[] {
  const lists = { jarSizes: day.jarSizes, kettles: day.kettles, canners: day.canners, operators: day.operators, crews: day.crews }
  const more = { families: day.families, recipes: day.recipes, batches: day.batches }
  const things = Object.entries({ ...lists, ...more }).flatMap(([name, list]) =>
    list.map((one, index) => ({ field: `${name}[${index}].id`, id: `${name} ${one.id}` })),
  )
  const people = day.crews.flatMap((crew, at) =>
    crew.people.map((id, index) => ({ field: `crews[${at}].people[${index}]`, id: `person ${id}` })),
  )
  const seen = new Set<string>()
  return [...things, ...people].flatMap(({ field, id }) => {
    const twice = seen.has(id)
    seen.add(id)
    return twice ? [{ field, message: 'is named twice' }] : []
  })
}

function unknownNames(day: CanningDay): FileProblem[] {
  const ids = (list: readonly { readonly id: string }[]) => new Set(list.map((one) => one.id))
  const [sizes, families, recipes] = [ids(day.jarSizes), ids(day.families), ids(day.recipes)]
  const unknown = (field: string, id: string, known: ReadonlySet<string>, what: string): FileProblem[] =>
    known.has(id) ? [] : [{ field, message: `${id} is no ${what} of this day` }]
  return [
    ...day.families.flatMap((family, index) => unknown(`families[${index}].jarSize`, family.jarSize, sizes, 'jar size')),
    ...day.recipes.flatMap((recipe, index) => unknown(`recipes[${index}].family`, recipe.family, families, 'family')),
    ...day.batches.flatMap((batch, index) => unknown(`batches[${index}].recipe`, batch.recipe, recipes, 'recipe')),
    ...day.canners.flatMap((canner, index) =>
      Object.keys(canner.jars).flatMap((size) => unknown(`canners[${index}].jars`, size, sizes, 'jar size')),
    ),
  ]
}

function times(day: CanningDay): FileProblem[] {
  const whole = (field: string, minutes: number): FileProblem[] =>
    minutes % day.grid === 0 ? [] : [{ field, message: `${minutes} is not a multiple of the grid of ${day.grid} min` }]
  const ordered = (field: string, from: number, to: number): FileProblem[] =>
    from <= to ? [] : [{ field, message: `${to} comes before ${from}` }]
  return [
    ...whole('close', day.close),
    ...(day.close > day.grid * MOST_SLOTS ? [{ field: 'close', message: `is more than ${MOST_SLOTS} steps of the grid` }] : []),
    ...day.families.flatMap((one, index) =>
      (['heatMinutes', 'processMinutes', 'restMinutes'] as const).flatMap((key) => whole(`families[${index}].${key}`, one[key])),
    ),
    ...(['loadMinutes', 'unloadMinutes'] as const).flatMap((key) => whole(`handling.${key}`, day.handling[key])),
    ...day.operators.flatMap((one, index) => ordered(`operators[${index}].to`, one.from, one.to)),
    ...day.crews.flatMap((crew, index) => [
      ...ordered(`crews[${index}].to`, crew.from, crew.to),
      ...(crew.break
        ? ordered(`crews[${index}].break.startMax`, Math.ceil(crew.break.startMin / day.grid) * day.grid, crew.break.startMax)
        : []),
    ]),
    ...day.batches.flatMap((batch, index) => [
      ...ordered(`batches[${index}].prep.peopleMax`, batch.prep.peopleMin, batch.prep.peopleMax),
      ...whole(`batches[${index}].cook.minutes`, batch.cook.minutes),
      ...whole(`batches[${index}].fill.minutes`, batch.fill.minutes),
    ]),
  ]
}

/** What is there but can do nothing, or is wanted but made by nothing: a slip, not a day. */
function idle(day: CanningDay): FileProblem[] {
  const made = new Set(day.batches.map((batch) => batch.recipe))
  return [
    ...day.canners.flatMap((canner, index) =>
      Object.values(canner.jars).some((jars) => jars > 0)
        ? []
        : [{ field: `canners[${index}].jars`, message: `${canner.id} holds no jar of any size` }],
    ),
    ...day.crews.flatMap((crew, index) =>
      crew.people.length > 0 && crew.from === crew.to
        ? [{ field: `crews[${index}].to`, message: `the people of ${crew.id} have no hours` }]
        : [],
    ),
    ...day.operators.flatMap((one, index) =>
      one.from === one.to ? [{ field: `operators[${index}].to`, message: `${one.id} has no hours` }] : [],
    ),
    ...day.recipes.flatMap((recipe, index) =>
      recipe.demandJars > 0 && !made.has(recipe.id)
        ? [{ field: `recipes[${index}].demandJars`, message: `${recipe.demandJars} jars are wanted and no batch makes any` }]
        : [],
    ),
  ]
}
