import type { DayPlan, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson, PlanPreparation } from '@/shared/planning/day-problem'
import type { Begun } from './check-day-plan'
import { clashes, overlap } from './spans'

/** Notes a broken rule. */
export type Say = (rule: string, detail: string) => void

const AT_HEAT_KNIFE_OR_CANNER: readonly PlannedTask['kind'][] = [
  'prep',
  'cook',
  'hold',
  'fill',
  'load',
  'unload',
  'come-up',
  'process',
  'rest',
  'jar-heat',
  'preheat',
]
const STANDING: readonly PlannedTask['kind'][] = [...AT_HEAT_KNIFE_OR_CANNER.filter((kind) => kind !== 'prep'), 'clean-up']

/** Nobody is in two places, does what they may not, or works when they are not there. */
export function checkPeople(problem: DayProblem, plan: DayPlan, begun: Begun, say: Say): void {
  const { window } = problem
  for (const task of plan.tasks) {
    if (new Set(task.peopleIds).size !== task.peopleIds.length) say('person-twice', `${task.id} names somebody twice`)
    for (const id of task.peopleIds) {
      const person = problem.people.find((entry) => entry.id === id)
      if (person && begun.ids.has(task.id)) continue
      if (person) checkPersonOnTask(problem, plan, task, person, say)
      else say('person', `${task.id}: nobody is ${id}`)
    }
    if (begun.ids.has(task.id)) continue
    const needsHands =
      ['prep', 'cook', 'hold', 'fill', 'load', 'unload', 'come-up', 'process', 'rest', 'wash', 'label'].includes(task.kind) &&
      task.end > task.start
    if (needsHands && task.peopleIds.length === 0) say('nobody', `${task.id} has no hands`)
  }
  checkLanguages(problem, plan, say)
  for (const person of problem.people) {
    checkRest(problem, plan, person, say)
    checkOneBody(problem, plan, person, begun, say)
    if (person.until <= begun.now) continue
    const briefed = plan.tasks.find((task) => task.kind === 'brief' && task.peopleIds.includes(person.id))
    const first = Math.min(
      ...plan.tasks.filter((task) => task.kind !== 'brief' && task.peopleIds.includes(person.id)).map((task) => task.start),
    )
    // who is gone before a briefing ends cannot hear it out, and is given no work either
    const stays = Math.max(person.from, window.peopleArriveAt) + window.briefingMinutes <= person.until
    if (window.briefingMinutes > 0 && !briefed && (stays || first < Number.POSITIVE_INFINITY))
      say('briefing', `${person.name} is not briefed`)
    if (briefed && first < briefed.end) say('briefing', `${person.name} works before the briefing`)
  }
  const inside = (at: number) => problem.people.filter((person) => person.from <= at && at < person.until).length
  if (window.headcountLimit !== null && problem.people.some((person) => inside(person.from) > (window.headcountLimit ?? 0)))
    say('headcount', 'too many people in the room')
}

function checkPersonOnTask(problem: DayProblem, plan: DayPlan, task: PlannedTask, person: PlanPerson, say: Say): void {
  if (task.start < person.from || task.end > person.until) say('hours', `${person.name} on ${task.id} out of hours`)
  if (person.ageClass !== 'adult' && AT_HEAT_KNIFE_OR_CANNER.includes(task.kind)) say('minor', `${person.name} on ${task.id}`)
  if (person.limits.includes('no-lifting') && (task.kind === 'load' || task.kind === 'unload'))
    say('lifting', `${person.name} on ${task.id}`)
  if (person.limits.includes('seated') && STANDING.includes(task.kind)) say('seated', `${person.name} on ${task.id}`)
  const preparation = preparationOfTask(problem, plan, task)
  if (!preparation) return
  const open = task.kind !== 'wash' && task.kind !== 'label'
  if (open && preparation.allergens.some((allergen) => person.allergies.includes(allergen))) say('allergy', `${person.name} on ${task.id}`)
  const stage = task.kind === 'hold' ? 'cook' : task.kind
  if (stage === 'prep' || stage === 'cook' || stage === 'fill' || stage === 'wash' || stage === 'label') {
    const { skills } = preparation[stage]
    if (skills.length > 0 && !skills.some((skill) => person.skills.includes(skill))) say('skill', `${person.name} on ${task.id}`)
  }
}

/** When somebody's hands or eyes are needed: every task with their name but the briefing and breaks, and each load that they mind, whole. */
function workOf(plan: DayPlan, person: PlanPerson): { start: number; end: number }[] {
  const tasks = plan.tasks.filter(({ kind, peopleIds }) => kind !== 'brief' && kind !== 'break' && peopleIds.includes(person.id))
  const minded = plan.loads.filter((load) => load.operatorId === person.id)
  return [...tasks, ...minded.map((load) => ({ start: Math.min(load.jarBoilAt, load.loadAt), end: load.emptyAt }))]
    .filter(({ start, end }) => end > start)
    .sort((a, b) => a.start - b.start)
}

/** Over 6 hours there: half an hour's break within 90 minutes of the middle, two over 12 hours; never more than 5 hours on end (a pause is 10). */
function checkRest(problem: DayProblem, plan: DayPlan, person: PlanPerson, say: Say): void {
  const rule = problem.breaks === undefined ? { longerThanMinutes: 360, minutes: 30, longestStretchMinutes: 300 } : problem.breaks
  if (rule === null) return
  const work = workOf(plan, person)
  const from = Math.max(person.from, problem.window.peopleArriveAt)
  const length = Math.min(person.until, problem.window.hardEnd) - from
  const breaks = plan.tasks.filter((task) => task.kind === 'break' && task.peopleIds.includes(person.id))
  const excused = plan.shortages.filter((gap) => gap.kind === 'break' && gap.personId === person.id).length
  const wanted = Math.max(0, Math.ceil(length / rule.longerThanMinutes) - 1)
  if (breaks.length + excused < wanted) say('break', `${person.name} has ${breaks.length} of ${wanted} breaks`)
  for (const pause of breaks) {
    if (pause.end - pause.start < rule.minutes) say('break', `${pause.id} is ${pause.end - pause.start} min`)
    for (const task of work) if (overlap(pause, task)) say('break', `${person.name} works in ${pause.id}`)
    const middles = Array.from({ length: wanted }, (_, index) => from + (length * (index + 1)) / (wanted + 1))
    if (!middles.some((middle) => pause.start >= middle - 91 && pause.end <= middle + 91))
      say('break', `${pause.id} lies out of its window`)
  }
  let start = work[0]?.start ?? 0
  let end = start
  let longestOne = 0
  for (const task of work) {
    if (task.start - end >= 10) {
      start = task.start
      longestOne = 0
    }
    end = Math.max(end, task.end)
    longestOne = Math.max(longestOne, task.end - task.start)
    if (end - start > Math.max(rule.longestStretchMinutes, longestOne)) say('stretch', `${person.name} works ${end - start} min on end`)
  }
}

const AT_A_STATION: readonly PlannedTask['kind'][] = ['prep', 'cook', 'fill', 'wash', 'label', 'load', 'unload']

/** Whoever shares no language with the others at a station has a helper who is there and speaks with both, or it is said. */
function checkLanguages(problem: DayProblem, plan: DayPlan, say: Say): void {
  const speaks = (id: string) => problem.people.find((person) => person.id === id)?.languages ?? []
  const meet = (a: readonly string[], b: readonly string[]) => a.some((language) => b.includes(language))
  for (const task of plan.tasks.filter(({ kind }) => AT_A_STATION.includes(kind))) {
    const together = plan.tasks.filter((other) => other.kind === task.kind && overlap(task, other)).flatMap((other) => other.peopleIds)
    for (const id of task.peopleIds) {
      const others = [...new Set(together)].filter((other) => other !== id).flatMap(speaks)
      if (others.length === 0 || meet(speaks(id), others)) continue
      // One helper serves both of two who do not understand each other.
      const here = plan.tasks.filter((other) => other.kind === task.kind && overlap(task, other)).map((other) => other.id)
      const crew = new Set(together)
      const help = plan.languageHelp?.filter((entry) => here.includes(entry.taskId) && crew.has(entry.personId)) ?? []
      const own = help.filter((entry) => entry.taskId === task.id && entry.personId === id)
      const said = plan.shortages.some(
        (gap) => gap.kind === 'language' && crew.has(gap.personId) && gap.taskIds?.some((at) => here.includes(at)),
      )
      if (own.length === 0 && said) continue
      const helpers = (own.length > 0 ? own : help).flatMap(({ helperId }) => problem.people.find((person) => person.id === helperId) ?? [])
      const between = helpers.filter(({ languages }) => meet(languages, speaks(id)) && meet(languages, others))
      if (helpers.length === 0) say('language', `${id} understands nobody at ${task.id}`)
      else if (between.length === 0) say('language', `no helper speaks with both at ${task.id}`)
      else if (!between.some(({ from, until }) => from <= task.start && until >= task.end))
        say('language', `no helper is there for ${task.id}`)
    }
  }
}

function preparationOfTask(problem: DayProblem, plan: DayPlan, task: PlannedTask): PlanPreparation | undefined {
  const id =
    plan.batches.find((batch) => batch.id === task.batchId)?.preparationId ??
    plan.loads.find((load) => load.id === task.loadId)?.preparationId
  return problem.preparations.find((entry) => entry.id === id)
}

/** One body: hands in one place, eyes on a stated number of things. */
function checkOneBody(problem: DayProblem, plan: DayPlan, person: PlanPerson, begun: Begun, say: Say): void {
  const isMinding = (load: DayPlan['loads'][number]) =>
    !begun.ids.has(load.id) ||
    plan.tasks.some((task) => task.loadId === load.id && task.peopleIds.includes(person.id) && task.end === load.emptyAt)
  const minded = plan.loads.filter((load) => load.operatorId === person.id && isMinding(load))
  const mine = plan.tasks.filter((task) => task.peopleIds.includes(person.id) && task.end > Math.max(task.start, begun.now))
  const hands = mine.filter((task) => task.attention === 'hands-on')
  // Work that had begun in two places was so before the plan was made anew.
  const isPast = (a: string, b: string) => begun.ids.has(a) && begun.ids.has(b)
  for (const [a, b] of clashes(hands.map((task) => ({ ...task, what: task.id }))))
    if (!isPast(a.what, b.what)) say('two-places', `${person.name}: ${a.what} and ${b.what}`)
  const kettles = mine.filter((task) => task.attention === 'watch' && task.cannerId === null)
  for (const [a, b] of clashes(kettles.map((task) => ({ ...task, what: task.id }))))
    say('two-kettles', `${person.name}: ${a.what} and ${b.what}`)
  for (const watch of kettles)
    for (const task of hands)
      if (overlap(watch, task) && !isPast(watch.id, task.id)) say('two-places', `${person.name}: ${watch.id} and ${task.id}`)
  for (const load of minded) {
    if (load.emptyAt <= begun.now) continue
    const rule = problem.minding.find((entry) => entry.method === load.method)
    if (!rule || !person.skills.includes(rule.skill)) {
      say('operator-skill', `${person.name} minds ${load.id}`)
      continue
    }
    const whole = { start: Math.min(load.jarBoilAt, load.loadAt), end: load.emptyAt }
    if (whole.start < person.from || whole.end > person.until) say('operator-hours', `${person.name} leaves ${load.id}`)
    const together = minded.filter((other) => Math.min(other.jarBoilAt, other.loadAt) <= whole.start && whole.start < other.emptyAt)
    if (together.length > rule.cannersAtOnce) say('operator-canners', `${person.name} minds ${together.length} canners`)
    if (together.some((other) => other.method !== load.method)) say('operator-canners', `${person.name} minds two methods`)
    for (const task of hands)
      if (task.kind !== 'load' && task.kind !== 'unload' && overlap(whole, task) && !isPast(load.id, task.id))
        say('operator-away', `${person.name} on ${task.id} while minding ${load.id}`)
    for (const task of kettles)
      if (rule.alongside === 'nothing' && overlap(whole, task) && !isPast(load.id, task.id))
        say('operator-away', `${person.name} on ${task.id} while minding ${load.id}`)
  }
}
