import type { CanningPlan } from '@/shared/scheduling/day/canning-day'
import type { DayModel } from '@/shared/scheduling/day/day-model'
import { heldUntil, type StateLoad } from '@/shared/scheduling/day/day-state'
import type { DaySolution } from '@/shared/scheduling/day/improve-day'

type Need = { readonly start: number; readonly end: number; readonly give: (name: string) => void }

/**
 * Writes a timetable out with named people, kettles and canners.
 *
 * Alike things are named in order of start, the first that is free: with no more in use at once than there are, this never fails.
 *
 * @param bound - slot before which no timetable ends
 */
export function writePlan(model: DayModel, solution: DaySolution, bound: number): CanningPlan {
  const { day } = model
  const minutes = (slot: number) => slot * day.grid
  const traysIn = traysByLoad(model, solution)
  const loads = [...new Set(solution.placements.flatMap((placement) => placement.loads))].sort(
    (a, b) => a.start - b.start || a.family - b.family || a.kind - b.kind,
  )
  const people = new Map<number, Need[]>()
  const kettles = new Map<number, Need[]>()
  const canners = new Map<number, Need[]>()
  const batches = solution.placements.map((placement, index) => {
    const batch = model.batches[index]
    const { prepStart, prepLength, cookStart, fillStart } = placement
    const filled = fillStart + (batch?.fill ?? 0)
    const prepPeople: string[] = []
    const fillPeople: string[] = []
    const cook = { kettle: '', start: minutes(cookStart) }
    for (const crew of placement.prepCrews) ask(people, crew, prepStart, prepStart + prepLength, (name) => void prepPeople.push(name))
    for (const crew of placement.fillCrews) ask(people, crew, fillStart, filled, (name) => void fillPeople.push(name))
    ask(kettles, placement.kettleKind, cookStart, filled + (batch?.turn ?? 0), (name) => {
      cook.kettle = name
    })
    return {
      id: day.batches[index]?.id ?? '',
      prep: { start: minutes(prepStart), people: prepPeople },
      cook,
      fill: { start: minutes(fillStart), people: fillPeople },
    }
  })
  const written = loads.map((load, index) => writeLoad(model, traysIn.get(load) ?? [], load, `L${index + 1}`, people, canners))
  name(people, (crew) => day.crews[crew]?.people ?? [])
  name(kettles, (kind) => model.kettleKinds[kind]?.ids ?? [])
  name(canners, (kind) => model.cannerKinds[kind]?.ids ?? [])
  const breaks = day.crews.flatMap((crew, index) =>
    crew.break ? [{ crew: crew.id, start: minutes(solution.breakStarts[index] ?? 0) }] : [],
  )
  const makespan = minutes(solution.finish)
  const lowerBound = Math.min(makespan, minutes(bound))
  return {
    format: 'canning-plan/1',
    instance: day.id,
    batches,
    loads: written,
    breaks,
    makespan,
    lowerBound,
    gap: lowerBound > 0 ? (makespan - lowerBound) / lowerBound : 0,
  }
}

function traysByLoad({ day }: DayModel, { placements }: DaySolution): Map<StateLoad, (readonly [string, number])[]> {
  const traysIn = new Map<StateLoad, (readonly [string, number])[]>()
  for (const [index, placement] of placements.entries()) {
    for (const [tray, load] of placement.loads.entries()) {
      const trays = traysIn.get(load) ?? []
      trays.push([day.batches[index]?.id ?? '', tray])
      traysIn.set(load, trays)
    }
  }
  return traysIn
}

function writeLoad(
  model: DayModel,
  trays: CanningPlan['loads'][number]['trays'],
  load: StateLoad,
  id: string,
  people: Map<number, Need[]>,
  canners: Map<number, Need[]>,
): CanningPlan['loads'][number] {
  const { day, handling } = model
  const end = load.start + (model.families[load.family]?.whole ?? 0)
  const loadPeople: string[] = []
  const unloadPeople: string[] = []
  const operator = day.operators[load.operator]?.id
  const written = {
    id,
    canner: '',
    start: load.start * day.grid,
    trays,
    loadPeople,
    unloadPeople,
    ...(operator === undefined ? {} : { operator }),
  }
  ask(canners, load.kind, load.start, end, (name) => {
    written.canner = name
  })
  for (const crew of load.loaders) ask(people, crew, load.start, load.start + handling.load, (name) => void loadPeople.push(name))
  for (const crew of load.unloaders) ask(people, crew, end - handling.unload, end, (name) => void unloadPeople.push(name))
  return written
}

function ask(needs: Map<number, Need[]>, of: number, start: number, end: number, give: (name: string) => void): void {
  const list = needs.get(of) ?? []
  list.push({ start, end: heldUntil(start, end), give })
  needs.set(of, list)
}

function name(needs: ReadonlyMap<number, readonly Need[]>, namesOf: (of: number) => readonly string[]): void {
  for (const [of, list] of needs) {
    const names = namesOf(of)
    const freeAt = names.map(() => 0)
    for (const need of [...list].sort((a, b) => a.start - b.start || a.end - b.end)) {
      const index = freeAt.findIndex((free) => free <= need.start)
      if (index < 0) throw new Error('more in use at once than there are')
      freeAt[index] = need.end
      need.give(names[index] ?? '')
    }
  }
}
