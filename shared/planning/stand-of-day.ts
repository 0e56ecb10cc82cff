import { begunBatches, type BegunBatch, isBegunTask, staying } from '@/shared/planning/begun-batches'
import { emptyCalendar, isPersonFree, takePerson, type WorkingHours } from '@/shared/planning/day-calendar'
import type { DayPlan, PlannedLoad, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanBurner, PlanCanner, PlanPreparation } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { burnerServes, type CannerPlace, type KitchenSetUp, setUpKitchen } from '@/shared/planning/kitchen-set-up'
import { cookOccupation } from '@/shared/planning/place-batch'
import { realLoad } from '@/shared/planning/real-load'
import { tableHolds } from '@/shared/planning/table-wash'
import type { AsPlanned, BatchUnderWay, TakenPerson, TakenThing, UnderWay } from '@/shared/planning/under-way'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Somebody takes over work that goes on when its person leaves; `to` null: nobody who may is free. */
export type HandOver = {
  readonly taskId: string
  readonly loadId: string | null
  readonly batchId: string | null
  readonly from: string
  readonly to: string | null
  readonly at: KitchenTime
}

/** A running day in the planner's terms. */
export type StandOfDay = {
  /** With people's real hours and without canners that are out. */
  readonly problem: DayProblem
  readonly batches: readonly BegunBatch[]
  /** In a canner or through it, with real times. */
  readonly loads: readonly PlannedLoad[]
  readonly handOvers: readonly HandOver[]
  readonly underWay: UnderWay
}

/** Reads what has begun out of the plan that stands and what really happened; nothing of it may move. */
export function standOfDay(problem: DayProblem, plan: DayPlan, soFar: DaySoFar): StandOfDay {
  const { now } = soFar
  const setUp = setUpNow(problem, plan, soFar)
  const inCanners = realLoads(problem, plan, soFar)
  const batches = begunBatches(problem, plan, soFar)
  const people: TakenPerson[] = []
  const handOvers: HandOver[] = []
  const free = freeNow(setUp.hours, people)
  for (const task of plan.tasks.filter(({ kind }) => WITHOUT_ENTRY.has(kind))) {
    const preparationId = plan.batches.find(({ id }) => id === task.batchId)?.preparationId ?? ''
    if (task.end <= now || !isBegunTask(problem, soFar, task, preparationId)) continue
    for (const personId of staying(problem, task))
      people.push({ personId, occupation: 'hands', start: task.start, end: task.end, minding: null })
  }
  for (const load of inCanners) handOvers.push(...mindLoad(problem, load, now, free, people))
  const held = batches.map((each) => holdBatch(each, now, free, people, handOvers))
  const loads = inCanners.map((load) => whoUnloads(problem, load, now, free, people))
  const batchesUnderWay = new Map(held.flatMap(({ batch, begun }) => (begun ? [[batch.id, begun] as const] : [])))
  const underWay: UnderWay = {
    ...{ now, setUp, people },
    things: [
      ...loads.map(({ cannerId, jarBoilAt, emptyAt }) => ({ id: cannerId, start: jarBoilAt, end: emptyAt })),
      ...thingsOf(problem, held),
    ],
    hotAt: new Map(setUp.places.map(({ canner }) => [canner.id, hotAt(plan, canner, now)])),
    outages: outagesOf(problem, soFar),
    batches: batchesUnderWay,
    produceAt: produceAt(soFar),
    lastOperator: new Map([...loads].sort((a, b) => a.loadAt - b.loadAt).map((load) => [load.cannerId, load.operatorId])),
    asPlanned: asPlanned(plan),
    finishAt: Math.max(problem.window.firstLoadAt, ...loads.map(({ emptyAt }) => emptyAt)),
  }
  return { problem, batches: held, loads, handOvers, underWay }
}

/** Work that nobody notes on the floor: it has begun when the plan says so. */
const WITHOUT_ENTRY: ReadonlySet<PlanTaskKind> = new Set(['prep', 'wash', 'label', 'break'])

function realLoads(problem: DayProblem, plan: DayPlan, soFar: DaySoFar): PlannedLoad[] {
  return soFar.loads.flatMap((fact) => {
    if (fact.state !== 'in-canner' && fact.state !== 'done') return []
    const planned = plan.loads.find(({ id }) => id === fact.loadId) ?? null
    const batchId = fact.jars[0]?.batchId
    const id = plan.batches.find((batch) => batch.id === batchId)?.preparationId ?? planned?.preparationId
    const preparation = problem.preparations.find((entry) => entry.id === id)
    return preparation ? [realLoad(planned, fact, preparation, soFar.now)] : []
  })
}

/** When the water of a canner is hot: when it was to be, if it heats already, else after heating it from now on. */
function hotAt(plan: DayPlan, { id, preheatMinutes }: PlanCanner, now: KitchenTime): KitchenTime {
  const heating = plan.tasks.find((task) => task.kind === 'preheat' && task.cannerId === id)
  return heating && heating.start < now ? heating.end : now + preheatMinutes
}

/** Canners keep their burners; one whose canner is out serves another canner or the kettles. */
function setUpNow(problem: DayProblem, plan: DayPlan, { now }: DaySoFar): KitchenSetUp {
  const usable = problem.canners.filter((canner) => canner.usable)
  const place = (canner: PlanCanner, burner: PlanBurner): CannerPlace => ({
    ...{ canner, burner },
    readyAt: Math.max(problem.window.firstLoadAt, hotAt(plan, canner, now)),
  })
  const places = usable.flatMap((canner) => {
    const burnerId = plan.tasks.find((task) => task.cannerId === canner.id && task.burnerId !== null)?.burnerId
    const burner = problem.burners.find(({ id }) => id === burnerId)
    return burner ? [place(canner, burner)] : []
  })
  const used = new Set(plan.tasks.flatMap((task) => (task.cannerId !== null && task.burnerId !== null ? [task.burnerId] : [])))
  const kept = new Set(places.map(({ burner }) => burner.id))
  const released = problem.burners.filter(({ id }) => used.has(id) && !kept.has(id))
  const wanted = new Set(plan.loads.map(({ method }) => method))
  for (const canner of usable.filter(({ id, method }) => wanted.has(method) && !places.some((each) => each.canner.id === id))) {
    const index = released.findIndex((burner) => burnerServes(burner, 'canner', canner))
    const [burner] = index < 0 ? [] : released.splice(index, 1)
    if (burner) places.push(place(canner, burner))
  }
  const onCanners = new Set(places.map(({ burner }) => burner.id))
  const kettleBurners = [...problem.burners]
    .sort((a, b) => (a.btuPerHour ?? 0) - (b.btuPerHour ?? 0))
    .filter(({ id }) => !onCanners.has(id))
  return { places, kettleBurners, hours: setUpKitchen(problem, []).hours }
}

type Free = (
  occupation: TakenPerson['occupation'],
  start: KitchenTime,
  end: KitchenTime,
  minding: TakenPerson['minding'],
  may: (hours: WorkingHours) => boolean,
) => string | null

/** Finds somebody who is free besides the people taken so far. */
function freeNow(hours: readonly WorkingHours[], people: readonly TakenPerson[]): Free {
  return (occupation, start, end, minding, may) => {
    const calendar = emptyCalendar()
    for (const each of people) takePerson(calendar, each.personId, each.occupation, each.start, each.end, each.minding)
    const found = hours.find((entry) => may(entry) && isPersonFree(calendar, entry, occupation, start, end, minding))
    return found?.person.id ?? null
  }
}

const leavesAt = (problem: DayProblem, personId: string): KitchenTime =>
  problem.people.find(({ id }) => id === personId)?.until ?? Number.NEGATIVE_INFINITY

/** Whoever minds a load minds it to its end, or hands it over when they leave. */
function mindLoad(problem: DayProblem, load: PlannedLoad, now: KitchenTime, free: Free, people: TakenPerson[]): HandOver[] {
  const minding = problem.minding.find(({ method }) => method === load.method) ?? null
  const preparation = problem.preparations.find(({ id }) => id === load.preparationId) ?? null
  const { operatorId, loaderId, jarBoilAt, loadAt, heatAt, emptyAt, id } = load
  const handOvers: HandOver[] = []
  const leaves = Math.max(now, leavesAt(problem, operatorId))
  people.push({ personId: loaderId, occupation: 'canner-hands', start: loadAt, end: heatAt, minding: null })
  people.push({ personId: operatorId, occupation: 'canner-watch', start: jarBoilAt, end: Math.min(emptyAt, leaves), minding })
  if (emptyAt > leaves) {
    const may = ({ person }: WorkingHours) =>
      minding !== null && person.id !== operatorId && mayDo(person, 'process', [minding.skill], preparation)
    const to = free('canner-watch', leaves, emptyAt, minding, may)
    if (to) people.push({ personId: to, occupation: 'canner-watch', start: leaves, end: emptyAt, minding })
    handOvers.push({ taskId: `process/${id}`, loadId: id, batchId: null, from: operatorId, to, at: leaves })
  }
  return handOvers
}

/** Whoever is to lift the jars out does so, unless they left or are held elsewhere by now: then somebody else who may. */
function whoUnloads(problem: DayProblem, load: PlannedLoad, now: KitchenTime, free: Free, people: TakenPerson[]): PlannedLoad {
  if (load.emptyAt <= now) return load
  const preparation = problem.preparations.find(({ id }) => id === load.preparationId) ?? null
  const from = Math.max(now, load.restEndAt)
  const find = (may: (id: string) => boolean) =>
    free('canner-hands', from, load.emptyAt, null, ({ person }) => may(person.id) && mayDo(person, 'unload', [], preparation))
  const isLifting = load.restEndAt < now && leavesAt(problem, load.unloaderId) >= load.emptyAt
  const planned = isLifting ? load.unloaderId : find((id) => id === load.unloaderId)
  const unloaderId = planned ?? find((id) => id === load.operatorId) ?? find(() => true) ?? load.unloaderId
  people.push({ personId: unloaderId, occupation: 'canner-hands', start: load.restEndAt, end: load.emptyAt, minding: null })
  return { ...load, unloaderId }
}

/** Books the cook or the fillers of a begun batch; a cook who leaves is followed by another who may. */
function holdBatch(each: BegunBatch, now: KitchenTime, free: Free, people: TakenPerson[], handOvers: HandOver[]): BegunBatch {
  const { begun, preparation } = each
  if (!begun || begun.stage === 'prepared') return each
  const { placed } = begun
  if (begun.stage === 'filled') {
    for (const personId of placed.cook.peopleIds) people.push(busy(personId, cookOccupation(preparation), placed.cook))
    for (const personId of begun.placed.fill.peopleIds) people.push(busy(personId, 'hands', begun.placed.fill))
    return each
  }
  const until = placed.cookEnd + 1
  const cooks = placed.cook.peopleIds.map((personId) => {
    const isFree = free('hands', now, now, null, ({ person }) => person.id === personId && person.until >= until)
    if (isFree !== null) return personId
    const to = substituteCook(preparation, placed.cook.peopleIds, now, until, free)
    handOvers.push({ taskId: `cook/${each.batch.id}`, loadId: null, batchId: each.batch.id, from: personId, to, at: now })
    return to ?? personId
  })
  for (const personId of cooks) people.push(busy(personId, cookOccupation(preparation), placed.cook))
  const handed: BatchUnderWay = { ...begun, placed: { ...placed, cook: { ...placed.cook, peopleIds: cooks } } }
  return { ...each, begun: handed }
}

const substituteCook = (preparation: PlanPreparation, cooks: readonly string[], now: KitchenTime, until: KitchenTime, free: Free) =>
  free(
    cookOccupation(preparation),
    now,
    until,
    null,
    ({ person }) => !cooks.includes(person.id) && mayDo(person, 'cook', preparation.cook.skills, preparation),
  )

const busy = (
  personId: string,
  occupation: TakenPerson['occupation'],
  { start, end }: { start: KitchenTime; end: KitchenTime },
): TakenPerson => ({
  ...{ personId, occupation, start, end },
  minding: null,
})

function thingsOf(problem: DayProblem, batches: readonly BegunBatch[]): TakenThing[] {
  return batches.flatMap(({ begun, preparation }) => {
    if (!begun || begun.stage === 'prepared') return []
    const { placed } = begun
    const isFilled = begun.stage === 'filled'
    const end = isFilled ? begun.placed.fillEnd : placed.cookEnd
    const start = placed.cookStart
    return [
      { id: placed.kettle.id, start, end: isFilled ? end + placed.kettle.washMinutes : end },
      { id: placed.burner.id, start, end },
      ...(placed.jarPot
        ? [placed.jarPot.kettle.id, placed.jarPot.burner.id].map((id) => ({ id, start: placed.jarPot?.start ?? start, end }))
        : []),
      ...(isFilled ? tableHolds(problem, preparation, begun.placed.tableIndex, begun.placed.fillStart, end) : []),
    ]
  })
}

function produceAt({ setbacks }: DaySoFar): Map<string, KitchenTime> {
  const latest = new Map<string, KitchenTime>()
  for (const each of setbacks)
    if (each.kind === 'produce-late') latest.set(each.preparationId, Math.max(each.at, latest.get(each.preparationId) ?? each.at))
  return latest
}

/** A canner that comes back is cold: it is heated anew. */
const outagesOf = (problem: DayProblem, { setbacks }: DaySoFar): TakenThing[] =>
  setbacks.flatMap((each) => {
    const canner = each.kind === 'canner-out' ? problem.canners.find(({ id }) => id === each.cannerId) : undefined
    if (each.kind !== 'canner-out' || !canner) return []
    return [{ id: canner.id, start: each.from, end: each.until === null ? Number.POSITIVE_INFINITY : each.until + canner.preheatMinutes }]
  })

function asPlanned(plan: DayPlan): AsPlanned {
  const slot = ({ start, end, peopleIds }: PlannedTask) => ({ start, end, peopleIds })
  return {
    slots: new Map(plan.tasks.filter(({ batchId }) => batchId !== null).map((task) => [`${task.kind}/${task.batchId}`, slot(task)])),
    kettles: new Map(plan.batches.map((batch) => [batch.id, batch.kettleId])),
    burners: new Map(
      plan.tasks.flatMap(({ kind, batchId, burnerId }) => (kind === 'cook' && batchId && burnerId ? [[batchId, burnerId]] : [])),
    ),
    loads: new Map(plan.loads.flatMap((load) => load.batchParts.map((part) => [part.batchId, load] as const)).reverse()),
  }
}
