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
  for (const person of problem.people) {
    checkOneBody(problem, plan, person, begun, say)
    if (person.until <= begun.now) continue
    const briefed = plan.tasks.find((task) => task.kind === 'brief' && task.peopleIds.includes(person.id))
    if (window.briefingMinutes > 0 && !briefed) say('briefing', `${person.name} is not briefed`)
    const first = Math.min(
      ...plan.tasks.filter((task) => task.kind !== 'brief' && task.peopleIds.includes(person.id)).map((task) => task.start),
    )
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
