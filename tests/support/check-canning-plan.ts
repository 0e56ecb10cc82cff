import type { CanningDay, CanningPlan } from '@/shared/scheduling/day/canning-day'

export type PlanFault = { readonly rule: string; readonly detail: string }

type Busy = { readonly start: number; readonly end: number; readonly amount: number; readonly what: string }

/**
 * Checks a `canning-plan/1` against its `canning-day/1`, minute by minute, from the rules of the format alone: nothing of the plan is
 * trusted but starts, people and machines. It shares no code with the search.
 */
export function checkCanningPlan(day: CanningDay, plan: CanningPlan): PlanFault[] {
  const faults: PlanFault[] = []
  const say = (rule: string, detail: string) => void faults.push({ rule, detail })
  const uses = new Map<string, Busy[]>()
  const use = (thing: string, start: number, end: number, what: string, amount = 1) => {
    uses.set(thing, [...(uses.get(thing) ?? []), { start, end, amount, what }])
  }
  const filledAt = checkBatches(day, plan, use, say)
  const emptyAt = checkLoads(day, plan, filledAt, use, say)
  checkBreaks(day, plan, use, say)
  for (const [thing, spans] of uses) checkLimit(thing, spans, limitOf(day, thing), say)
  const cooling = plan.loads
    .flatMap((load) => load.trays)
    .reduce((sum, [id, tray]) => sum + (day.batches.find((batch) => batch.id === id)?.trays[tray] ?? 0), 0)
  if (cooling > day.coolingJars) say('cooling', `${cooling} jars, room for ${day.coolingJars}`)
  if (emptyAt > day.close) say('closing', `ends at ${emptyAt}`)
  if (plan.makespan !== emptyAt) say('makespan', `says ${plan.makespan}, ends at ${emptyAt}`)
  if (plan.lowerBound > emptyAt) say('bound', `ends at ${emptyAt}, before its own bound ${plan.lowerBound}`)
  return faults
}

type Use = (thing: string, start: number, end: number, what: string, amount?: number) => void
type Say = (rule: string, detail: string) => void

function checkBatches(day: CanningDay, plan: CanningPlan, use: Use, say: Say): Map<string, number> {
  const filledAt = new Map<string, number>()
  for (const batch of day.batches) {
    const found = plan.batches.filter((entry) => entry.id === batch.id)
    const [one] = found
    if (!one || found.length > 1) {
      say('batch', `${batch.id} is planned ${found.length} times`)
      continue
    }
    const team = one.prep.people.length
    const prepared = one.prep.start + day.grid * Math.ceil(batch.prep.work / (Math.max(1, team) * day.grid) - 1e-9)
    const cooked = one.cook.start + batch.cook.minutes
    const filled = one.fill.start + batch.fill.minutes
    filledAt.set(batch.id, filled)
    for (const start of [one.prep.start, one.cook.start, one.fill.start])
      if (start < 0 || start % day.grid !== 0) say('grid', `${batch.id} at ${start}`)
    if (team < batch.prep.peopleMin || team > batch.prep.peopleMax) say('team', `${batch.id}: ${team} prepare`)
    if (one.fill.people.length !== batch.fill.people) say('team', `${batch.id}: ${one.fill.people.length} fill`)
    if (one.prep.start < batch.readyAt) say('ready', `${batch.id} is prepared before it is there`)
    if (one.cook.start < prepared) say('order', `${batch.id} is cooked before it is prepared`)
    if (batch.maxWaitPrepCook !== null && one.cook.start - prepared > batch.maxWaitPrepCook) say('wait', `${batch.id} waits for its kettle`)
    if (one.fill.start < cooked) say('order', `${batch.id} is filled before it is cooked`)
    if (one.fill.start - cooked > batch.maxWaitCookFill) say('wait', `${batch.id} waits in its kettle`)
    checkKettle(day, batch, one.cook.kettle, say)
    for (const person of one.prep.people) work(day, person, batch.prep.skill, one.prep.start, prepared, `${batch.id} prep`, use, say)
    for (const person of one.fill.people) work(day, person, batch.fill.skill, one.fill.start, filled, `${batch.id} fill`, use, say)
    use('prep places', one.prep.start, prepared, batch.id, team)
    use('fill stations', one.fill.start, filled, batch.id)
    use('stove watch', one.cook.start, filled, batch.id)
    use('burners', one.cook.start, filled, batch.id)
    use(`kettle ${one.cook.kettle}`, one.cook.start, filled + batch.kettleTurn, batch.id)
  }
  return filledAt
}

function checkKettle(day: CanningDay, batch: CanningDay['batches'][number], id: string, say: Say): void {
  const kettle = day.kettles.find((entry) => entry.id === id)
  const most = day.recipes.find((entry) => entry.id === batch.recipe)?.maxBatchMl ?? null
  if (!kettle || kettle.ml < batch.ml) say('kettle', `${batch.id} does not fit ${id}`)
  if (most !== null && batch.ml > most) say('batch-size', `${batch.id} is over the tested batch`)
}

function work(day: CanningDay, person: string, skill: string, start: number, end: number, what: string, use: Use, say: Say): void {
  const crew = day.crews.find((entry) => entry.people.includes(person))
  if (!crew) {
    say('person', `${what}: nobody is ${person}`)
    return
  }
  if (!crew.skills.some((has) => has === skill)) say('skill', `${what}: ${person}`)
  if (start < crew.from || end > crew.to) say('hours', `${what}: ${person}`)
  use(`person ${person}`, start, end, what)
}

function checkLoads(day: CanningDay, plan: CanningPlan, filledAt: ReadonlyMap<string, number>, use: Use, say: Say): number {
  const seen = new Map<string, number>()
  let emptyAt = 0
  for (const load of plan.loads) {
    const canner = day.canners.find((entry) => entry.id === load.canner)
    const batches = load.trays.map(([id]) => day.batches.find((batch) => batch.id === id))
    const families = new Set(batches.map((batch) => day.recipes.find((recipe) => recipe.id === batch?.recipe)?.family))
    const family = day.families.find((entry) => entry.id === [...families][0])
    if (!canner || !family || families.size !== 1) {
      say('load', `${load.id} mixes families or has no canner`)
      continue
    }
    const jars = load.trays.reduce((sum, [, tray], index) => sum + (batches[index]?.trays[tray] ?? Number.NaN), 0)
    if (canner.method !== family.method) say('method', `${load.id} in ${canner.id}`)
    if (!(jars <= (canner.jars[family.jarSize] ?? 0))) say('canner', `${load.id}: ${jars} jars in ${canner.id}`)
    if (load.start % day.grid !== 0) say('grid', `${load.id} at ${load.start}`)
    for (const [index, [id, tray]] of load.trays.entries()) {
      seen.set(`${id} ${tray}`, (seen.get(`${id} ${tray}`) ?? 0) + 1)
      const filled = filledAt.get(id) ?? 0
      if (load.start < filled) say('order', `${load.id} before ${id} is filled`)
      if (load.start - filled > (batches[index]?.maxWaitFillProcess ?? 0)) say('wait', `${id} waits for ${load.id}`)
    }
    const hotUntil = load.start + day.handling.loadMinutes + family.heatMinutes + family.processMinutes
    const rested = hotUntil + family.restMinutes
    const end = rested + day.handling.unloadMinutes
    emptyAt = Math.max(emptyAt, end)
    if (load.loadPeople.length !== day.handling.people || load.unloadPeople.length !== day.handling.people)
      say('team', `${load.id} is lifted by too few`)
    for (const person of load.loadPeople)
      work(day, person, day.handling.skill, load.start, load.start + day.handling.loadMinutes, `${load.id} in`, use, say)
    for (const person of load.unloadPeople) work(day, person, day.handling.skill, rested, end, `${load.id} out`, use, say)
    use('burners', load.start, hotUntil, load.id)
    use(`canner ${load.canner}`, load.start, end, load.id)
    if (family.method === 'pressure') operate(day, load, end, use, say)
  }
  for (const batch of day.batches)
    for (const tray of batch.trays.keys())
      if (seen.get(`${batch.id} ${tray}`) !== 1) say('tray', `${batch.id} ${tray} is in ${seen.get(`${batch.id} ${tray}`) ?? 0} loads`)
  return emptyAt
}

function operate(day: CanningDay, load: CanningPlan['loads'][number], end: number, use: Use, say: Say): void {
  const operator = day.operators.find((entry) => entry.id === load.operator)
  if (!operator) {
    say('operator', `${load.id} has none`)
    return
  }
  if (load.start < operator.from || end > operator.to) say('operator', `${operator.id} is away during ${load.id}`)
  use(`operator ${operator.id}`, load.start, end, load.id)
}

function checkBreaks(day: CanningDay, plan: CanningPlan, use: Use, say: Say): void {
  for (const crew of day.crews) {
    if (!crew.break) continue
    const start = plan.breaks.find((entry) => entry.crew === crew.id)?.start
    if (start === undefined || start < crew.break.startMin || start > crew.break.startMax) {
      say('break', `${crew.id} at ${start}`)
      continue
    }
    for (const person of crew.people) use(`person ${person}`, start, start + crew.break.minutes, 'break')
  }
}

function limitOf(day: CanningDay, thing: string): number {
  const shared: Record<string, number> = {
    'prep places': day.prepPlaces,
    'fill stations': day.fillStations,
    'stove watch': day.stoveWatch,
    burners: day.burners,
  }
  const operator = day.operators.find((entry) => `operator ${entry.id}` === thing)
  return shared[thing] ?? operator?.maxCanners ?? 1
}

function checkLimit(thing: string, spans: readonly Busy[], limit: number, say: Say): void {
  for (const { start, end } of spans) {
    if (end <= start) continue
    const used = spans.filter((span) => span.start <= start && start < span.end).reduce((sum, span) => sum + span.amount, 0)
    if (used > limit) {
      say('limit', `${thing}: ${used} at ${start}, limit ${limit}`)
      return
    }
  }
}
