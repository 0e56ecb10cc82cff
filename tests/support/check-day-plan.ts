import type { DayPlan, PlannedLoad, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { checkPeople, type Say } from './check-day-people'
import { clashes, put, type Span } from './spans'

/** One broken rule of the day, with what broke it. */
export type Violation = { readonly rule: string; readonly detail: string }

/** What has begun before a plan was made anew: ids of batches, loads and tasks. They are as they are; the rules hold for the rest. */
export type Begun = { readonly ids: ReadonlySet<string>; readonly now: number }

const NOTHING_BEGUN: Begun = { ids: new Set(), now: Number.NEGATIVE_INFINITY }

/**
 * Checks a day's plan against the rules of the trade and of the kitchen, written from the rules alone: it imports types only, recomputes
 * every time from the preparation's own figures, and trusts nothing the plan says about itself.
 *
 * @param begun - of a running day; without it the whole day is still to come
 */
export function checkDayPlan(problem: DayProblem, plan: DayPlan, begun: Begun = NOTHING_BEGUN): Violation[] {
  const found: Violation[] = []
  const say = (rule: string, detail: string) => void found.push({ rule, detail })
  const preparationOf = (id: string) => problem.preparations.find((entry) => entry.id === id)

  if (begun === NOTHING_BEGUN) checkDemand(problem, plan, say)
  checkLocks(problem, plan, say)
  for (const batch of plan.batches) {
    if (begun.ids.has(batch.id)) continue
    const preparation = preparationOf(batch.preparationId)
    if (preparation) checkBatch(problem, plan, batch, preparation, say)
    else say('preparation', `${batch.id} is of no preparation`)
  }
  for (const load of plan.loads) {
    if (begun.ids.has(load.id)) continue
    const preparation = preparationOf(load.preparationId)
    if (preparation) checkLoad(problem, plan, load, preparation, begun, say)
    else say('preparation', `${load.id} is of no preparation`)
  }
  checkEquipment(problem, plan, begun, say)
  checkPeople(problem, plan, begun, say)
  checkNightBefore(problem, plan, say)
  checkEnd(problem, plan, say)
  return found
}

function checkDemand(problem: DayProblem, plan: DayPlan, say: Say): void {
  for (const preparation of problem.preparations) {
    const spare =
      preparation.spare.kind === 'jars' ? preparation.spare.jars : Math.ceil(preparation.jarsWanted * preparation.spare.share - 1e-9)
    const wanted = preparation.jarsWanted + spare
    const batches = plan.batches.filter((batch) => batch.preparationId === preparation.id)
    const planned = batches.reduce((sum, batch) => sum + batch.multiple * preparation.batchYield.typical, 0)
    if (planned < wanted) say('demand', `${preparation.id}: ${planned} jars planned, ${wanted} wanted`)
    if (planned >= wanted + preparation.batchYield.typical) say('demand', `${preparation.id}: a whole batch too many`)
    for (const batch of batches) {
      const inLoads = plan.loads.flatMap((load) => load.batchParts).filter((part) => part.batchId === batch.id)
      for (const key of ['low', 'typical', 'high'] as const) {
        const sum = inLoads.reduce((total, part) => total + part.jars[key], 0)
        if (sum !== batch.jars[key]) say('jars-conserved', `${batch.id}: ${sum} ${key} jars in loads, ${batch.jars[key]} filled`)
        if (batch.jars[key] !== batch.multiple * preparation.batchYield[key]) say('yield', `${batch.id}: ${batch.jars[key]} ${key} jars`)
      }
    }
  }
}

function checkBatch(problem: DayProblem, plan: DayPlan, batch: DayPlan['batches'][number], preparation: PlanPreparation, say: Say): void {
  if (!Number.isInteger(batch.multiple) || batch.multiple < 1) say('scaling', `${batch.id}: ${batch.multiple} tested batches`)
  if (preparation.scaling === 'whole-batches-only' && batch.multiple !== 1) say('scaling', `${batch.id} is doubled`)
  const kettle = problem.kettles.find((entry) => entry.id === batch.kettleId)
  if (!kettle || (kettle.use !== 'any' && kettle.use !== preparation.kettleUse)) say('kettle-use', `${batch.id} in ${batch.kettleId}`)
  if (kettle && kettle.litres < batch.multiple * preparation.batchLitres) say('kettle-volume', `${batch.id} does not fit ${kettle.id}`)
  const tasks = plan.tasks.filter((task) => task.batchId === batch.id)
  const one = (kind: PlannedTask['kind']) => tasks.filter((task) => task.kind === kind)
  const [cook] = one('cook')
  const [fill] = one('fill')
  if (!cook || !fill || one('cook').length > 1 || one('fill').length > 1) {
    say('tasks', `${batch.id} is not cooked and filled once`)
    return
  }
  if (cook.end - cook.start !== preparation.kettleMinutes) say('duration', `${batch.id} cooks ${cook.end - cook.start} min`)
  if (cook.start !== batch.cookStart || cook.end !== batch.cookEnd || fill.start !== batch.fillStart || fill.end !== batch.fillEnd)
    say('tasks', `${batch.id}: times differ from its tasks`)
  if (fill.start < cook.end) say('order', `${batch.id} is filled before it is cooked`)
  if (fill.start - cook.end > preparation.cookedToFillingLimitMinutes)
    say('cooked-to-filling', `${batch.id} waits ${fill.start - cook.end} min in the kettle`)
  if (fill.start > cook.end && !one('hold').some((task) => task.start === cook.end && task.end === fill.start))
    say('tasks', `${batch.id} is not held hot`)
  for (const task of [cook, fill])
    if (task.kettleId !== batch.kettleId || task.burnerId === null || task.burnerId !== cook.burnerId)
      say('on-heat', `${task.id} leaves its kettle or burner`)
  for (const kind of ['prep', 'fill', 'wash', 'label'] as const) checkStage(plan, batch, preparation, kind, one(kind), say)
  const neededBy = preparation.prepBefore === 'cook' ? cook.start : fill.start
  for (const task of one('prep')) if (task.end > neededBy) say('order', `${batch.id} is prepared too late`)
  for (const task of one('wash'))
    if (task.end > fill.start || fill.start - task.end > 30 + preparation.jarBoilMinutes)
      say('order', `${batch.id}: jars washed at the wrong time`)
  if (
    preparation.jarTreatment === 'boiled-in-pot' &&
    !one('jar-heat').some(
      (task) => fill.start - task.start >= preparation.jarBoilMinutes && task.end >= fill.start && task.kettleId && task.burnerId,
    )
  ) {
    say('jars-boiled', `${batch.id}: jars are not boiled before filling`)
  }
  if (
    preparation.jarTreatment === 'washed-hot' &&
    preparation.method !== 'pressure' &&
    (preparation.process.sterilise || preparation.process.minutes < 10)
  ) {
    say('jars-boiled', `${batch.id}: a short process with jars that were not boiled`)
  }
}

function checkStage(
  plan: DayPlan,
  batch: DayPlan['batches'][number],
  preparation: PlanPreparation,
  kind: 'prep' | 'fill' | 'wash' | 'label',
  tasks: readonly PlannedTask[],
  say: Say,
): void {
  const work = preparation[kind]
  if (work.workMinutes === 0) return
  const excused = kind === 'label' && plan.shortages.some((gap) => gap.kind === 'hands' && gap.batchId === batch.id)
  const [task] = tasks
  if (!task || tasks.length > 1) {
    if (!excused) say('tasks', `${batch.id} has ${tasks.length} ${kind} tasks`)
    return
  }
  const team = task.peopleIds.length
  if (team < work.peopleMin || team > work.peopleMax) say('team', `${task.id}: ${team} people`)
  if ((task.end - task.start) * Math.max(1, team) < work.workMinutes * batch.multiple)
    say('duration', `${task.id} is too short for ${team} people`)
}

function checkLoad(problem: DayProblem, plan: DayPlan, load: PlannedLoad, preparation: PlanPreparation, begun: Begun, say: Say): void {
  const canner = problem.canners.find((entry) => entry.id === load.cannerId)
  if (!canner?.usable) say('canner', `${load.id} in a canner that may not be used`)
  if (canner?.method !== preparation.method || load.method !== preparation.method)
    say('method', `${load.id}: ${preparation.method} food in ${load.cannerId}`)
  if (load.jarSize !== preparation.jarSize) say('jar-size', `${load.id} mixes jar sizes`)
  const jars = load.batchParts.reduce((sum, part) => sum + part.jars.high, 0)
  if (jars > (canner?.capacity[preparation.jarSize] ?? 0)) say('canner-capacity', `${load.id}: up to ${jars} jars`)
  const { cycle, process } = preparation
  const heat = cycle.comeUpMinutes + cycle.ventMinutes + cycle.pressuriseMinutes
  const steps: [string, number, number][] = [
    ['loading', load.heatAt - load.loadAt, cycle.loadMinutes],
    ['come-up', load.boilAt - load.heatAt, heat],
    ['process', load.processEndAt - load.boilAt, process.minutes],
    ['rest', load.restEndAt - load.processEndAt, cycle.restMinutes + cycle.waitMinutes],
    ['unloading', load.emptyAt - load.restEndAt, cycle.unloadMinutes],
  ]
  for (const [name, is, must] of steps) if (is < must) say('cycle', `${load.id}: ${name} is ${is} of ${must} min`)
  if (load.processMinutes < process.publishedMinutes || process.minutes < process.publishedMinutes)
    say('process', `${load.id} runs shorter than published`)
  if (
    preparation.method === 'pressure' &&
    (load.ventAt === null || load.ventEndAt === null || load.ventEndAt - load.ventAt < cycle.ventMinutes)
  )
    say('vent', `${load.id} is not vented`)
  for (const part of load.batchParts) {
    const batch = plan.batches.find((entry) => entry.id === part.batchId)
    if (!batch || batch.preparationId !== load.preparationId) {
      say('mixed-load', `${load.id} holds ${part.batchId}`)
      continue
    }
    if (load.loadAt < batch.fillEnd) say('order', `${load.id} is loaded before ${batch.id} is filled`)
    // Jars that waited when the plan was made have their own last minute, which the checker of new plans knows.
    if (!begun.ids.has(batch.id) && load.loadAt - batch.fillEnd > preparation.filledToLoadedLimitMinutes)
      say('filled-to-loaded', `${batch.id} waits ${load.loadAt - batch.fillEnd} min`)
    if (preparation.jarTreatment === 'boiled-in-canner' && batch.fillStart - load.jarBoilAt < preparation.jarBoilMinutes)
      say('jars-boiled', `${load.id}: jars are not boiled`)
  }
  if (load.loadAt < problem.window.firstLoadAt) say('first-load', `${load.id} is loaded before the first-load time`)
  if (preparation.loadBy !== undefined && load.loadAt > preparation.loadBy)
    say('load-by', `${load.id} is loaded after ${preparation.loadBy}`)
  if (preparation.onlyCannerIds && !preparation.onlyCannerIds.includes(load.cannerId)) say('only-canners', `${load.id} in ${load.cannerId}`)
  if (load.emptyAt > problem.window.cannersEmptyBy) say('canners-empty-by', `${load.id} is out at ${load.emptyAt}`)
  checkLoadTasks(plan, load, say)
}

function checkLoadTasks(plan: DayPlan, load: PlannedLoad, say: Say): void {
  const tasks = plan.tasks.filter((task) => task.loadId === load.id)
  const must: [PlannedTask['kind'], number, number][] = [
    ['load', load.loadAt, load.heatAt],
    ['come-up', load.heatAt, load.boilAt],
    ['process', load.boilAt, load.processEndAt],
    ['rest', load.processEndAt, load.restEndAt],
    ['unload', load.restEndAt, load.emptyAt],
  ]
  for (const [kind, start, end] of must) {
    if (!tasks.some((task) => task.kind === kind && task.start === start && task.end === end && task.cannerId === load.cannerId))
      say('tasks', `${load.id} lacks its ${kind} task`)
  }
  const heated = tasks.filter((task) => ['load', 'come-up', 'process'].includes(task.kind))
  if (heated.some((task) => task.burnerId === null || task.burnerId !== heated[0]?.burnerId)) say('on-heat', `${load.id} is off its burner`)
}

/** Every task fixed by hand is where, when and with whom it was fixed. */
function checkLocks(problem: DayProblem, plan: DayPlan, say: Say): void {
  for (const lock of problem.locks ?? []) {
    const id = `${lock.preparationId}/${lock.batch}`
    const load = plan.loads.find(({ batchParts }) => batchParts.some((part) => part.batchId === id))
    const task = plan.tasks.find((entry) => entry.batchId === id && entry.kind === lock.task)
    const is =
      lock.task === 'load'
        ? load && { at: load.loadAt, on: load.cannerId, who: [load.operatorId] }
        : task && { at: task.start, on: task.kettleId, who: task.peopleIds }
    if (!is) say('lock', `${id} is locked and not in the plan`)
    else if (
      (lock.at ?? is.at) !== is.at ||
      (lock.equipmentId ?? is.on) !== is.on ||
      (lock.personId !== null && !is.who.includes(lock.personId))
    )
      say('lock', `${lock.task} of ${id} is not as locked`)
  }
}

function checkEquipment(problem: DayProblem, plan: DayPlan, begun: Begun, say: Say): void {
  const kettles = new Map<string, Span[]>()
  const burners = new Map<string, Span[]>()
  const tables = new Map<string, Span[]>()
  const canners = new Map<string, Span[]>()
  for (const batch of plan.batches) {
    const wash = problem.kettles.find((entry) => entry.id === batch.kettleId)?.washMinutes ?? 0
    put(kettles, batch.kettleId, { start: batch.cookStart, end: batch.fillEnd + wash, what: batch.id })
    const burner = plan.tasks.find((task) => task.batchId === batch.id && task.kind === 'cook')?.burnerId
    if (burner) put(burners, burner, { start: batch.cookStart, end: batch.fillEnd, what: batch.id })
  }
  for (const task of plan.tasks) {
    if (task.kind === 'fill') put(tables, String(task.tableIndex), { start: task.start, end: task.end, what: task.id })
    if (task.kind === 'fill' && (task.tableIndex === null || task.tableIndex < 0 || task.tableIndex >= problem.fillTables))
      say('fill-table', `${task.id} at no table`)
    if (task.kind === 'jar-heat' && task.kettleId) put(kettles, task.kettleId, { start: task.start, end: task.end, what: task.id })
    if (task.kind === 'jar-heat' && task.kettleId && task.burnerId)
      put(burners, task.burnerId, { start: task.start, end: task.end, what: task.id })
    checkBurnerKind(problem, task, say)
  }
  for (const load of plan.loads)
    put(canners, load.cannerId, { start: Math.min(load.jarBoilAt, load.loadAt), end: load.emptyAt, what: load.id })
  for (const [id, spans] of canners) {
    const rings = new Set(plan.tasks.filter((task) => task.cannerId === id && task.burnerId !== null).map((task) => task.burnerId))
    if (rings.size > 1) say('canner-moved', `${id} changes burners`)
    const start = Math.min(
      ...spans.map((span) => span.start),
      ...plan.tasks.filter((task) => task.kind === 'preheat' && task.cannerId === id).map((task) => task.start),
    )
    const last = Math.max(...plan.loads.filter((load) => load.cannerId === id).map((load) => load.processEndAt))
    for (const ring of rings) if (ring) put(burners, ring, { start, end: last, what: id })
  }
  for (const task of plan.tasks)
    if (task.kind === 'preheat' && task.start < problem.window.accessAt) say('access', `${task.id} before the key turns`)
  for (const [id, canner] of problem.canners.map((entry) => [entry.id, entry] as const)) {
    const first = Math.min(...(canners.get(id) ?? []).map((span) => span.start))
    const heating = plan.tasks.find((task) => task.kind === 'preheat' && task.cannerId === id)
    if (
      first >= begun.now &&
      Number.isFinite(first) &&
      canner.preheatMinutes > 0 &&
      (!heating || heating.end > first || heating.end - heating.start < canner.preheatMinutes)
    )
      say('preheat', `${id} is cold at its first load`)
  }
  for (const [name, map] of Object.entries({ kettle: kettles, burner: burners, 'fill-table': tables, canner: canners })) {
    for (const [id, spans] of map)
      for (const [a, b] of clashes(spans))
        if (!begun.ids.has(a.what) || !begun.ids.has(b.what)) say(`${name}-twice`, `${id}: ${a.what} and ${b.what}`)
  }
  checkTablesWashed(problem, plan, begun, say)
  checkCircuits(problem, burners, say)
  const cooling = plan.loads.flatMap((load) => load.batchParts).reduce((sum, part) => sum + part.jars.high, 0)
  if (problem.rackJars !== null && cooling > problem.rackJars) say('rack', `${cooling} jars to cool, room for ${problem.rackJars}`)
}

/** Food with an allergen leaves it on the table: whatever is free of it comes there only after the washing. */
function checkTablesWashed(problem: DayProblem, plan: DayPlan, begun: Begun, say: Say): void {
  const wash = problem.tableWashMinutes ?? 0
  if (wash === 0) return
  const allergensIn = (batchId: string | null): readonly string[] => {
    const preparationId = plan.batches.find(({ id }) => id === batchId)?.preparationId
    return [...problem.preparations, ...(problem.chilled ?? [])].find(({ id }) => id === preparationId)?.allergens ?? []
  }
  const fillings = plan.tasks.filter(({ kind }) => kind === 'fill')
  for (const before of fillings)
    for (const after of fillings) {
      if (before.tableIndex !== after.tableIndex || after.start < before.end || after.start - before.end >= wash) continue
      if (begun.ids.has(before.batchId ?? '') && begun.ids.has(after.batchId ?? '')) continue
      for (const allergen of allergensIn(before.batchId))
        if (!allergensIn(after.batchId).includes(allergen))
          say('table-washed', `${after.id} follows ${before.id}: ${allergen} is not washed off`)
    }
}

function checkBurnerKind(problem: DayProblem, task: PlannedTask, say: Say): void {
  if (task.burnerId === null) return
  const burner = problem.burners.find((entry) => entry.id === task.burnerId)
  if (!burner) {
    say('burner', `${task.id} on no burner`)
    return
  }
  const kettle = problem.kettles.find((entry) => entry.id === task.kettleId)
  const canner = problem.canners.find((entry) => entry.id === task.cannerId)
  const use = canner ? 'canner' : task.kind === 'jar-heat' ? 'jars' : kettle?.use === 'brine' ? 'brine' : null
  if (use && burner.forUses && !burner.forUses.includes(use)) say('burner-use', `${task.id} on ${burner.id}`)
  if (burner.kind === 'portable-electric' && (use === 'canner' || kettle?.use === 'jam' || kettle?.use === 'cook'))
    say('burner-use', `${task.id} on a portable ring`)
  if (canner?.method === 'pressure' && (burner.btuPerHour ?? 0) > 12_000)
    say('burner-use', `${task.id}: a pressure canner on a ring over 12,000 BTU/h`)
}

function checkCircuits(problem: DayProblem, burners: ReadonlyMap<string, readonly Span[]>, say: Say): void {
  for (const circuit of problem.circuits) {
    const on = problem.burners.filter((burner) => burner.circuit === circuit.id)
    const moments = on.flatMap((burner) => (burners.get(burner.id) ?? []).map((span) => span.start))
    for (const moment of moments) {
      const watts = on
        .filter((burner) => (burners.get(burner.id) ?? []).some((span) => span.start <= moment && moment < span.end))
        .reduce((sum, burner) => sum + (burner.watts ?? 0), 0)
      if (watts > circuit.watts) say('circuit', `${circuit.id} carries ${watts} W at ${moment}`)
    }
  }
}

function checkNightBefore(problem: DayProblem, plan: DayPlan, say: Say): void {
  for (const preparation of problem.preparations) {
    const batches = plan.batches.filter((batch) => batch.preparationId === preparation.id)
    for (const step of preparation.leadSteps) {
      const tubs = plan.nightBefore.filter((entry) => entry.preparationId === preparation.id && entry.label === step.label)
      for (const batch of batches) {
        const tub = tubs.find((entry) => entry.batchIds.includes(batch.id))
        if (!tub) {
          say('night-before', `${batch.id} has no ${step.label}`)
          continue
        }
        if (tub.batchIds.length > step.batchesPerTub) say('night-before', `${tub.householdId} has too many batches in a tub`)
        if (tub.endAt - tub.startAt < step.hours * 60 || tub.startAt > tub.startBy || tub.endAt > tub.doneBy)
          say('night-before', `${step.label} of ${batch.id} is too short`)
        const prep = plan.tasks.find((task) => task.batchId === batch.id && task.kind === 'prep')
        if (tub.doneBy > (step.doneBy ?? prep?.start ?? batch.cookStart))
          say('night-before', `${step.label} of ${batch.id} is done too late`)
        const household = problem.households.find((entry) => entry.id === tub.householdId)
        if (!household) say('night-before', `${step.label} of ${batch.id} is nobody's`)
        if (household && preparation.allergens.some((allergen) => household.allergies.includes(allergen)))
          say('allergy', `${household.name} soaks what it is allergic to`)
      }
    }
  }
}

function checkEnd(problem: DayProblem, plan: DayPlan, say: Say): void {
  const last = Math.max(problem.window.firstLoadAt, ...plan.loads.map((load) => load.emptyAt))
  if (plan.finishAt !== last) say('finish', `says ${plan.finishAt}, the last canner is empty at ${last}`)
  if (plan.finishAt < plan.lowerBound) say('bound', `ends before the bound ${plan.lowerBound}`)
  const cleanUp = plan.tasks.find((task) => task.kind === 'clean-up')
  if (
    problem.window.cleanUpMinutes > 0 &&
    (!cleanUp || cleanUp.start < last || cleanUp.end - cleanUp.start < problem.window.cleanUpMinutes)
  )
    say('clean-up', 'no clean-up after the last canner')
  for (const task of plan.tasks) if (task.end > problem.window.hardEnd) say('hard-end', `${task.id} ends after everybody is out`)
}
