import { type CanningDay, CREW_SKILLS, type CrewSkill, type DayBatch, type DayFamily } from '@/shared/scheduling/day/canning-day'

/** A batch in slots of the grid and indices instead of names. */
export type ModelBatch = {
  readonly index: number
  readonly family: number
  readonly ready: number
  readonly work: number
  readonly prepSkill: number
  /** Slots of prep by team size; the index is the number of people, from `peopleMin` on. */
  readonly prepLength: readonly number[]
  /** Team sizes, those that waste the fewest person-slots first. */
  readonly teams: readonly number[]
  readonly waitPrepCook: number
  readonly cook: number
  readonly waitCookFill: number
  readonly fill: number
  readonly fillPeople: number
  readonly fillSkill: number
  readonly turn: number
  readonly trays: readonly number[]
  /** Tray indices, largest first. */
  readonly trayOrder: readonly number[]
  readonly jars: number
  readonly waitFillLoad: number
  /** Kettle kinds that hold it, the smallest first. */
  readonly kettleKinds: readonly number[]
  /** Canner kinds that take its smallest tray, those that hold most first. */
  readonly cannerKinds: readonly number[]
  /** Slots from the end of filling to the last jar out. */
  readonly tail: number
}

export type ModelFamily = {
  readonly isPressure: boolean
  /** Slots on the burner: loading, heat and process. */
  readonly onHeat: number
  readonly whole: number
  /** Canner kinds that take it, those that hold most first. */
  readonly cannerKinds: readonly number[]
  /** Jars by canner kind; 0 where it may not go. */
  readonly capacity: readonly number[]
}

/** Alike kettles, canners: only how many are in use matters, names are given afterwards. */
export type Kind = { readonly ids: readonly string[] }

export type ModelCrew = {
  readonly size: number
  readonly from: number
  readonly to: number
  readonly skills: readonly boolean[]
  readonly breakLength: number
  readonly breakFrom: number
  readonly breakTo: number
}

/** A canning day in slots: what the search reads. */
export type DayModel = {
  readonly day: CanningDay
  readonly slots: number
  readonly batches: readonly ModelBatch[]
  readonly families: readonly ModelFamily[]
  readonly kettleKinds: readonly Kind[]
  readonly cannerKinds: readonly Kind[]
  readonly crews: readonly ModelCrew[]
  readonly operators: readonly { readonly from: number; readonly to: number; readonly most: number }[]
  /** Crews with a skill, those with the fewest other skills first. */
  readonly crewsWith: readonly (readonly number[])[]
  readonly handling: { readonly load: number; readonly unload: number; readonly people: number; readonly skill: number }
  /** Some work of people takes no time: who does it may do something else that begins or ends then, which no count of hours tells. */
  readonly hasMoments: boolean
}

const skillIndex = (skill: CrewSkill) => CREW_SKILLS.indexOf(skill)

/** Turns a checked day into slots. Durations round up to the grid, hours inwards. */
export function modelOf(day: CanningDay): DayModel {
  const up = (minutes: number) => Math.ceil(minutes / day.grid - 1e-9)
  const down = (minutes: number) => Math.floor(minutes / day.grid + 1e-9)
  const kettleKinds = kindsOf(day.kettles, (kettle) => String(kettle.ml))
  const cannerKinds = kindsOf(day.canners, (canner) => `${canner.method} ${JSON.stringify(Object.entries(canner.jars).sort())}`)
  const families = day.families.map((family) => familyOf(day, family, cannerKinds, up))
  const crews = day.crews.map(
    (crew): ModelCrew => ({
      size: crew.people.length,
      from: up(crew.from),
      to: down(crew.to),
      skills: CREW_SKILLS.map((skill) => crew.skills.includes(skill)),
      breakLength: crew.break ? up(crew.break.minutes) : 0,
      breakFrom: crew.break ? up(crew.break.startMin) : 0,
      breakTo: crew.break ? Math.max(up(crew.break.startMin), Math.min(down(crew.break.startMax), down(day.close))) : 0,
    }),
  )
  const { loadMinutes, unloadMinutes, people, skill } = day.handling
  return {
    day,
    slots: down(day.close),
    batches: day.batches.map((batch, index) => batchOf(day, batch, index, families, kettleKinds, up, down)),
    families,
    kettleKinds: kettleKinds.map(({ ids }) => ({ ids })),
    cannerKinds: cannerKinds.map(({ ids }) => ({ ids })),
    crews,
    operators: day.operators.map((operator) => ({ from: up(operator.from), to: down(operator.to), most: operator.maxCanners })),
    crewsWith: CREW_SKILLS.map((_, index) => crewsWithSkill(crews, index)),
    handling: { load: up(loadMinutes), unload: up(unloadMinutes), people, skill: skillIndex(skill) },
    hasMoments: Math.min(loadMinutes, unloadMinutes, ...day.batches.flatMap(({ prep, fill }) => [prep.work, fill.minutes])) === 0,
  }
}

type Round = (minutes: number) => number
type Kinds<Thing> = (Kind & { readonly sample: Thing })[]

function kindsOf<Thing extends { readonly id: string }>(things: readonly Thing[], keyOf: (thing: Thing) => string): Kinds<Thing> {
  const kinds = new Map<string, { ids: string[]; sample: Thing }>()
  for (const thing of things) {
    const kind = kinds.get(keyOf(thing)) ?? { ids: [], sample: thing }
    kind.ids.push(thing.id)
    kinds.set(keyOf(thing), kind)
  }
  return [...kinds.values()]
}

function familyOf(day: CanningDay, family: DayFamily, kinds: Kinds<CanningDay['canners'][number]>, up: Round): ModelFamily {
  const { loadMinutes, unloadMinutes } = day.handling
  const onHeat = up(loadMinutes + family.heatMinutes + family.processMinutes)
  const capacity = kinds.map(({ sample }) => (sample.method === family.method ? (sample.jars[family.jarSize] ?? 0) : 0))
  const cannerKinds = kinds.map((_, index) => index).filter((index) => (capacity[index] ?? 0) > 0)
  cannerKinds.sort((a, b) => (capacity[b] ?? 0) - (capacity[a] ?? 0))
  return {
    isPressure: family.method === 'pressure',
    onHeat,
    whole: onHeat + up(family.restMinutes) + up(unloadMinutes),
    cannerKinds,
    capacity,
  }
}

function batchOf(
  day: CanningDay,
  batch: DayBatch,
  index: number,
  families: readonly ModelFamily[],
  kettles: Kinds<CanningDay['kettles'][number]>,
  up: Round,
  down: Round,
): ModelBatch {
  const recipe = day.recipes.find((entry) => entry.id === batch.recipe)
  const family = day.families.findIndex((entry) => entry.id === recipe?.family)
  const { work, peopleMin, peopleMax } = batch.prep
  const prepLength = Array.from({ length: peopleMax + 1 }, (_, team) => Math.ceil(work / (Math.max(1, team) * day.grid) - 1e-9))
  const teams = Array.from({ length: peopleMax - peopleMin + 1 }, (_, step) => peopleMin + step)
  const smallest = Math.min(...batch.trays)
  const kinds = kettles.map((_, kind) => kind).filter((kind) => (kettles[kind]?.sample.ml ?? 0) >= batch.ml)
  return {
    index,
    family,
    ready: up(batch.readyAt),
    work,
    prepSkill: skillIndex(batch.prep.skill),
    prepLength,
    teams: teams.sort((a, b) => a * (prepLength[a] ?? 0) - b * (prepLength[b] ?? 0) || b - a),
    waitPrepCook: batch.maxWaitPrepCook === null ? down(day.close) : down(batch.maxWaitPrepCook),
    cook: up(batch.cook.minutes),
    waitCookFill: down(batch.maxWaitCookFill),
    fill: up(batch.fill.minutes),
    fillPeople: batch.fill.people,
    fillSkill: skillIndex(batch.fill.skill),
    turn: up(batch.kettleTurn),
    trays: batch.trays,
    trayOrder: batch.trays.map((_, tray) => tray).sort((a, b) => (batch.trays[b] ?? 0) - (batch.trays[a] ?? 0)),
    jars: batch.trays.reduce((sum, jars) => sum + jars, 0),
    waitFillLoad: down(batch.maxWaitFillProcess),
    kettleKinds: kinds.sort((a, b) => (kettles[a]?.sample.ml ?? 0) - (kettles[b]?.sample.ml ?? 0)),
    cannerKinds: (families[family]?.cannerKinds ?? []).filter((kind) => (families[family]?.capacity[kind] ?? 0) >= smallest),
    tail: families[family]?.whole ?? 0,
  }
}

function crewsWithSkill(crews: readonly ModelCrew[], skill: number): number[] {
  const others = (index: number) => crews[index]?.skills.filter(Boolean).length ?? 0
  return crews
    .map((_, index) => index)
    .filter((index) => crews[index]?.skills[skill])
    .sort((a, b) => others(a) - others(b))
}
