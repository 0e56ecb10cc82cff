import type { CanningDay, CanningPlan, CrewSkill, DayBatch, DayFamily } from '@/shared/scheduling/day/canning-day'
import { type Random, randomFrom, wholeBelow } from '@/shared/scheduling/random'

/** A day that can be run, and a plan of it: kitchen and hands are no more than the plan asks for. */
export type RunDay = { readonly day: CanningDay; readonly plan: CanningPlan }

type Span = { readonly start: number; readonly end: number; readonly amount: number }
type Task = { readonly start: number; readonly end: number; readonly skill: CrewSkill; readonly team: string[] }
type Person = { readonly id: string; readonly skills: readonly CrewSkill[]; readonly tasks: Task[] }
type Load = { readonly family: DayFamily; readonly start: number; readonly end: number; jars: number; readonly trays: [string, number][] }
type Changing<Thing> = { -readonly [Key in keyof Thing]: Thing[Key] }

const SIZES = ['half-pint', 'pint', 'quart'] as const
const HANDLING = { loadMinutes: 5, unloadMinutes: 5, people: 1, skill: 'hot' } as const
const GRID = 5
const LARGEST_LOAD = 24

/**
 * A random day that is known to have a plan, because the plan is made first: stages at random minutes within their waits, then just as many
 * kettles, canners, burners, places and people, with no more hours and skills, as they take. It often closes when that plan ends.
 */
export function someCanningDay(seed: number): RunDay {
  const random = randomFrom(seed)
  const between = (least: number, most: number) => least + wholeBelow(random, most - least + 1)
  const oneOf = <Thing>(things: readonly Thing[]) => things[wholeBelow(random, things.length)] as Thing
  const slots = (least: number, most: number) => GRID * between(least, most)
  const families = Array.from({ length: between(1, 4) }, (_, index): DayFamily => {
    const method = oneOf(['boiling-water', 'boiling-water', 'pressure'] as const)
    return {
      ...{ id: `F${index + 1}`, method, jarSize: oneOf(SIZES), heatMinutes: slots(2, 6), processMinutes: slots(1, 15) },
      restMinutes: method === 'pressure' ? slots(6, 11) : 5,
    }
  })
  const batches: DayBatch[] = []
  const planned: CanningPlan['batches'][number][] = []
  const loads: Load[] = []
  const tasks: Task[] = []
  const team = (count: number, start: number, end: number, skill: CrewSkill) => {
    const people: string[] = []
    for (let one = 0; one < count; one++) tasks.push({ start, end, skill, team: people })
    return people
  }
  for (let index = 0; index < between(1, 9); index++) {
    const id = `B${index + 1}`
    const family = oneOf(families)
    const wait = (most: number) => oneOf([0, GRID, most, between(0, most)])
    const [peopleMin, work] = [between(1, 2), between(10, 170)]
    const trays = Array.from({ length: between(1, 3) }, () => between(1, 9))
    const batch: DayBatch = {
      ...{ id, recipe: `R${family.id.slice(1)}`, ml: between(1_000, 16_000), jars: trays.reduce((sum, jars) => sum + jars, 0), trays },
      ...{
        readyAt: between(0, 200),
        prep: { work, skill: oneOf(['prep', 'knife', 'hot'] as const), peopleMin, peopleMax: peopleMin + between(0, 3) },
      },
      ...{ maxWaitPrepCook: oneOf([null, wait(90)]), cook: { low: 5, minutes: slots(1, 12), high: 90 }, maxWaitCookFill: wait(10) },
      ...{
        fill: { minutes: slots(1, 5), people: between(1, 2), skill: 'hot' },
        kettleTurn: oneOf([0, 5, 7, 30]),
        maxWaitFillProcess: wait(20),
      },
    }
    const within = (most: number) => GRID * between(0, Math.floor(most / GRID))
    const count = between(batch.prep.peopleMin, batch.prep.peopleMax)
    const prepStart = GRID * (Math.ceil(batch.readyAt / GRID) + between(0, 6))
    const prepEnd = prepStart + GRID * Math.ceil(work / (count * GRID))
    const cookStart = prepEnd + within(batch.maxWaitPrepCook ?? 60)
    const fillStart = cookStart + batch.cook.minutes + within(batch.maxWaitCookFill)
    const filled = fillStart + batch.fill.minutes
    batches.push(batch)
    planned.push({
      id,
      prep: { start: prepStart, people: team(count, prepStart, prepEnd, batch.prep.skill) },
      cook: { kettle: '', start: cookStart },
      fill: { start: fillStart, people: team(batch.fill.people, fillStart, filled, 'hot') },
    })
    for (const [tray, jars] of trays.entries()) {
      const open = loads.filter(
        (load) =>
          load.family === family &&
          load.start >= filled &&
          load.start - filled <= batch.maxWaitFillProcess &&
          load.jars + jars <= LARGEST_LOAD,
      )
      const load = open[0] ?? newLoad(family, filled + within(batch.maxWaitFillProcess))
      if (!open[0]) loads.push(load)
      load.jars += jars
      load.trays.push([id, tray])
    }
  }
  return runDay({ seed, random, families, batches, planned, loads, tasks, team })
}

function newLoad(family: DayFamily, start: number): Load {
  const whole = HANDLING.loadMinutes + family.heatMinutes + family.processMinutes + family.restMinutes + HANDLING.unloadMinutes
  return { family, start, end: start + whole, jars: 0, trays: [] }
}

type Made = {
  readonly seed: number
  readonly random: Random
  readonly families: readonly DayFamily[]
  readonly batches: readonly DayBatch[]
  readonly planned: readonly CanningPlan['batches'][number][]
  readonly loads: Load[]
  readonly tasks: Task[]
  readonly team: (count: number, start: number, end: number, skill: CrewSkill) => string[]
}

/** The kitchen and the people that the plan asks for. */
function runDay({ seed, random, families, batches, planned, loads, tasks, team }: Made): RunDay {
  const kettles: { id: string; ml: number; free: number }[] = []
  const canners: { id: string; method: DayFamily['method']; jars: Record<string, number>; free: number }[] = []
  const operators: Changing<CanningDay['operators'][number]>[] = []
  const onStove = planned.map((one, index): Span => {
    const batch = batches[index] as DayBatch
    return { start: one.cook.start, end: one.fill.start + batch.fill.minutes, amount: 1 }
  })
  const inOrder = planned.map((one, index) => ({
    cook: one.cook as { kettle: string },
    batch: batches[index] as DayBatch,
    span: onStove[index] as Span,
  }))
  for (const { cook, batch, span } of inOrder.sort((a, b) => a.span.start - b.span.start)) {
    const free = kettles.find((one) => one.free <= span.start && one.ml >= batch.ml)
    const kettle = free ?? added(kettles, { id: `K${kettles.length + 1}`, ml: batch.ml, free: 0 })
    kettle.free = span.end + batch.kettleTurn
    cook.kettle = kettle.id
  }
  const writtenLoads = loads
    .sort((a, b) => a.start - b.start)
    .map((load, index) => {
      const { method, jarSize } = load.family
      const free = canners.find((one) => one.free <= load.start && one.method === method && (one.jars[jarSize] ?? 0) >= load.jars)
      const canner = free ?? added(canners, { id: `C${canners.length + 1}`, method, jars: { [jarSize]: load.jars }, free: 0 })
      canner.free = load.end
      const operator = `O${operators.length + 1}`
      if (method === 'pressure') operators.push({ id: operator, from: load.start, to: load.end, maxCanners: 1 })
      return {
        ...{ id: `L${index + 1}`, canner: canner.id, start: load.start, trays: load.trays, ...(method === 'pressure' ? { operator } : {}) },
        loadPeople: team(HANDLING.people, load.start, load.start + HANDLING.loadMinutes, HANDLING.skill),
        unloadPeople: team(HANDLING.people, load.end - HANDLING.unloadMinutes, load.end, HANDLING.skill),
      }
    })
  const ends = Math.max(...loads.map(({ end }) => end))
  const close = ends + GRID * oneOfTwo(random, 0, 6)
  const people = staff(random, tasks)
  const breaks: { crew: string; start: number }[] = []
  const crews = people.map((person, index) => {
    const hours = { from: Math.min(...person.tasks.map(({ start }) => start)), to: Math.max(...person.tasks.map(({ end }) => end)) }
    const crew = {
      id: `G${index + 1}`,
      people: [person.id],
      skills: person.skills,
      from: oneOfTwo(random, 0, hours.from),
      to: oneOfTwo(random, close, hours.to),
    }
    const minutes = 5 + wholeBelow(random, 30)
    const starts = Array.from({ length: close / GRID }, (_, slot) => slot * GRID).filter((start) =>
      person.tasks.every((task) => start + minutes <= task.start || task.end <= start),
    )
    const start = starts[wholeBelow(random, starts.length)]
    if (start === undefined || random() < 0.5) return { ...crew, break: null }
    breaks.push({ crew: crew.id, start })
    const around = oneOfTwo(random, 0, 60)
    return { ...crew, break: { minutes, startMin: Math.max(0, start - around), startMax: start + around } }
  })
  const jars = batches.reduce((sum, batch) => sum + batch.jars, 0)
  const onHeat = loads.map(
    (load): Span => ({ start: load.start, end: load.end - load.family.restMinutes - HANDLING.unloadMinutes, amount: 1 }),
  )
  const preparing = planned.map(({ prep }, index): Span => {
    const work = batches[index]?.prep.work ?? 0
    return { start: prep.start, end: prep.start + GRID * Math.ceil(work / (prep.people.length * GRID)), amount: prep.people.length }
  })
  const filling = planned.map(
    ({ fill }, index): Span => ({ start: fill.start, end: fill.start + (batches[index]?.fill.minutes ?? 0), amount: 1 }),
  )
  const day: CanningDay = {
    ...{
      format: 'canning-day/1',
      id: `some-${seed}`,
      grid: GRID,
      close,
      jarSizes: SIZES.map((id, index) => ({ id, ml: 236 * 2 ** index })),
    },
    ...{
      kettles: kettles.map(({ id, ml }) => ({ id, ml })),
      canners: canners.map(({ id, method, jars: holds }) => ({ id, method, jars: holds })),
    },
    ...{ burners: most([...onStove, ...onHeat]), stoveWatch: most(onStove), prepPlaces: most(preparing), fillStations: most(filling) },
    ...{ operators, crews, handling: HANDLING, families, batches, coolingJars: jars },
    recipes: families.map(({ id }) => ({ id: `R${id.slice(1)}`, name: id, family: id, maxBatchMl: null, demandJars: 0 })),
  }
  const plan: CanningPlan = {
    ...{ format: 'canning-plan/1', instance: day.id, batches: planned, loads: writtenLoads, breaks, makespan: ends, lowerBound: 0, gap: 0 },
  }
  return { day, plan }
}

function added<Thing>(list: Thing[], one: Thing): Thing {
  list.push(one)
  return one
}

const oneOfTwo = (random: Random, one: number, other: number) => (random() < 0.5 ? one : other)

/** Gives every task somebody who is free and has the skill; whoever is missing comes. */
function staff(random: Random, tasks: readonly Task[]): Person[] {
  const people: Person[] = []
  for (const task of [...tasks].sort((a, b) => a.start - b.start)) {
    const isFree = (one: Person) => one.tasks.every((other) => other.end <= task.start || task.end <= other.start)
    const free = people.find((one) => one.skills.includes(task.skill) && isFree(one))
    const second = (['prep', 'knife', 'hot'] as const)[wholeBelow(random, 9)]
    const skills = second && second !== task.skill ? [task.skill, second] : [task.skill]
    const person = free ?? added(people, { id: `P${people.length + 1}`, skills, tasks: [] })
    person.tasks.push(task)
    task.team.push(person.id)
  }
  return people
}

/** The most that is in use at once. */
function most(spans: readonly Span[]): number {
  const at = ({ start }: Span) => spans.filter((one) => one.start <= start && start < one.end).reduce((sum, one) => sum + one.amount, 0)
  return Math.max(0, ...spans.map(at))
}
