import { METHODS } from '@/shared/kitchen/methods'
import type { PlanLimit, PlanRefusal, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { badNumber } from '@/shared/planning/check-numbers'
import { cannerMinutesOfMethod, loadMinutesOf } from '@/shared/planning/finish-bound'
import { kettleHeatStop } from '@/shared/planning/kettle-heat'
import { burnerServes, kettleHeat } from '@/shared/planning/kitchen-set-up'
import { isUnowned, planNightBefore } from '@/shared/planning/night-before'
import type { BlockCause, Blocked } from '@/shared/planning/placing-context'
import { operatorHoursStop } from '@/shared/planning/operator-hours'
import { jarsToPlan, type Split, type SplitJob, splitDemand } from '@/shared/planning/split-demand'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

type PlainRefusal = Omit<PlanRefusal, 'waysOut'>

/** A plan that leaves less than this share of the canner minutes spare is called not fitting (common practice). */
export const LEAST_SLACK_SHARE = 0.01

/**
 * Jars need boiling before they are filled when they are processed for less than this, minutes.
 *
 * Source: Complete Guide to Home Canning, USDA Agriculture Information Bulletin 539 (2015), Guide 1, sterilization of empty jars.
 */
export const NO_JAR_BOILING_FROM_MINUTES = 10

/** What can be refused by counting alone, before any timetable is tried; null when nothing can. */
export function refusalBeforePlanning(problem: DayProblem): PlainRefusal | null {
  const bad = badNumber(problem)
  if (bad) return refusal({ kind: 'bad-number', field: bad.field }, bad.value, bad.least)
  const wanted = problem.preparations.filter((preparation) => jarsToPlan(preparation) > 0)
  for (const preparation of wanted) {
    const limit = jarsNeedBoiling(preparation) ?? unownedStep(problem, preparation)
    if (limit) return refusal(limit.limit, limit.needed, limit.available)
  }
  const split = splitDemand(problem)
  if (!split.ok) return refusal(split.problem.limit, split.problem.needed, split.problem.available)
  return wanted.length > 0 ? countedRefusal(problem, split.value, wanted) : null
}

/** Names the limit that most often stopped the timetables that were tried; ties go by the order of the causes. */
export function blockedRefusal(problem: DayProblem, split: Split, blocked: Blocked): PlainRefusal {
  const [cause] = BLOCK_CAUSES.filter((name) => blocked[name] > 0).sort((a, b) => blocked[b] - blocked[a])
  return { ...refusalFor(problem, cause ?? 'canner'), loadCount: loadsOf(split) }
}

const BLOCK_CAUSES: readonly Exclude<BlockCause, 'canner' | 'lock'>[] = [
  'operator',
  'lifter',
  'cook',
  'fill',
  'prep',
  'wash',
  'burner',
  'kettle',
  'table',
]

function refusalFor(problem: DayProblem, cause: Exclude<BlockCause, 'lock'>): PlainRefusal {
  if (cause === 'canner') return refusal({ kind: 'hours' }, 1, 0)
  if (cause === 'burner') return refusal({ kind: 'burners' }, problem.burners.length + 1, problem.burners.length)
  if (cause === 'table') return refusal({ kind: 'fill-tables' }, problem.fillTables + 1, problem.fillTables)
  if (cause === 'kettle') return refusal({ kind: 'kettles' }, problem.kettles.length + 1, problem.kettles.length)
  const stage = cause === 'operator' ? 'process' : cause === 'lifter' ? 'load' : cause
  const skills = skillsOfStage(problem, stage)
  const have = problem.people.filter((person) => mayDo(person, stage, skills, null)).length
  return refusal({ kind: 'people-with-skill', skills, stage, preparationId: null }, have + 1, have)
}

function skillsOfStage(problem: DayProblem, stage: PlanTaskKind): string[] {
  if (stage === 'process') return problem.minding.map((entry) => entry.skill)
  if (stage === 'load') return []
  const wanted = problem.preparations.filter((preparation) => jarsToPlan(preparation) > 0)
  return [...new Set(wanted.flatMap((preparation) => workOf(preparation, stage).skills))]
}

const workOf = (preparation: PlanPreparation, stage: PlanTaskKind) =>
  stage === 'fill' ? preparation.fill : stage === 'prep' ? preparation.prep : stage === 'wash' ? preparation.wash : preparation.cook

function refusal(limit: PlanLimit, needed: number, available: number): PlainRefusal {
  return { kind: 'does-not-fit', limit, needed, available, at: null, loadCount: 0 }
}

const loadsOf = (split: Split) => split.jobs.reduce((sum, job) => sum + job.loads.length, 0)

/** A limit with both figures in its unit. */
export type Stop = { readonly limit: PlanLimit; readonly needed: number; readonly available: number; readonly at?: KitchenTime }

function jarsNeedBoiling(preparation: PlanPreparation): Stop | null {
  const { process, jarTreatment, id } = preparation
  const short = process.minutes < NO_JAR_BOILING_FROM_MINUTES || process.sterilise
  if (preparation.method === 'pressure' || !short || jarTreatment !== 'washed-hot') return null
  return { limit: { kind: 'jars-need-boiling', preparationId: id }, needed: NO_JAR_BOILING_FROM_MINUTES, available: process.minutes }
}

function unownedStep(problem: DayProblem, preparation: PlanPreparation): Stop | null {
  const steps = planNightBefore(problem, preparation, ['first'], problem.window.firstLoadAt)
  const unowned = steps.find(isUnowned)
  return unowned ? { limit: { kind: 'lead-step', preparationId: preparation.id, label: unowned.label }, needed: 1, available: 0 } : null
}

function headcountStop(problem: DayProblem): Stop | null {
  const crowd = mostPeopleAtOnce(problem)
  const { headcountLimit } = problem.window
  return headcountLimit !== null && crowd > headcountLimit
    ? { limit: { kind: 'headcount' }, needed: crowd, available: headcountLimit }
    : null
}

function mostPeopleAtOnce(problem: DayProblem): number {
  const inside = (at: number) => problem.people.filter((person) => person.from <= at && at < person.until).length
  return Math.max(0, ...problem.people.map((person) => inside(person.from)))
}

function countedRefusal(problem: DayProblem, split: Split, wanted: readonly PlanPreparation[]): PlainRefusal | null {
  const stop =
    METHODS.map((method) => cannerMinutesStop(problem, split.jobs, method)).find((found) => found !== null) ??
    headcountStop(problem) ??
    burnersStop(problem, wanted) ??
    kettleHeatStop(problem, split.jobs, wanted) ??
    rackStop(problem, split) ??
    operatorHoursStop(problem, split.jobs) ??
    skillsStop(problem, wanted)
  if (!stop) return null
  const loadCount = stop.limit.kind === 'canner-minutes' ? loadMinutesOf(problem, split.jobs, stop.limit.method).length : loadsOf(split)
  return { ...refusal(stop.limit, stop.needed, stop.available), at: stop.at ?? null, loadCount }
}

function cannerMinutesStop(problem: DayProblem, jobs: readonly SplitJob[], method: (typeof METHODS)[number]): Stop | null {
  const { needed, available, slack } = cannerMinutesOfMethod(problem, jobs, method)
  if (needed === 0 || slack >= available * LEAST_SLACK_SHARE) return null
  const canners = problem.canners.filter((canner) => canner.usable && canner.method === method).length
  return { limit: { kind: 'canner-minutes', method, canners }, needed, available }
}

function burnersStop(problem: DayProblem, wanted: readonly PlanPreparation[]): Stop | null {
  const uses = new Set(wanted.map(kettleHeat))
  const methods = new Set(wanted.map((preparation) => preparation.method))
  const needed = uses.size + methods.size
  const served = [...uses].every((use) => problem.burners.some((burner) => burnerServes(burner, use)))
  const canners = problem.canners.filter((canner) => canner.usable && methods.has(canner.method))
  const heated = canners.some((canner) => problem.burners.some((burner) => burnerServes(burner, 'canner', canner)))
  if (served && heated && problem.burners.length >= 1 + methods.size) return null
  return { limit: { kind: 'burners' }, needed: Math.max(needed, problem.burners.length + 1), available: problem.burners.length }
}

function rackStop(problem: DayProblem, split: Split): Stop | null {
  const jars = split.jobs.flatMap((job) => job.batches).reduce((sum, batch) => sum + batch.jars.high, 0)
  return problem.rackJars !== null && jars > problem.rackJars
    ? { limit: { kind: 'rack' }, needed: jars, available: problem.rackJars }
    : null
}

const STAGES: readonly PlanTaskKind[] = ['prep', 'cook', 'fill', 'wash']

function skillsStop(problem: DayProblem, wanted: readonly PlanPreparation[]): Stop | null {
  for (const preparation of wanted) {
    for (const stage of STAGES) {
      const work = workOf(preparation, stage)
      const able = problem.people.filter((person) => mayDo(person, stage, work.skills, preparation)).length
      if (work.workMinutes === 0 || able >= work.peopleMin) continue
      const limit: PlanLimit = { kind: 'people-with-skill', skills: work.skills, stage, preparationId: preparation.id }
      return { limit, needed: work.peopleMin, available: able }
    }
    const stop = operatorStop(problem, preparation)
    if (stop) return stop
  }
  return null
}

function operatorStop(problem: DayProblem, preparation: PlanPreparation): Stop | null {
  const skills = problem.minding.filter((entry) => entry.method === preparation.method).map((entry) => entry.skill)
  const able = skills.length === 0 ? 0 : problem.people.filter((person) => mayDo(person, 'process', skills, preparation)).length
  if (able > 0) return null
  return { limit: { kind: 'people-with-skill', skills, stage: 'process', preparationId: preparation.id }, needed: 1, available: 0 }
}
