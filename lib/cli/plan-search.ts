import { parseCanningDay } from '@/shared/forms/canning-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import { mayPlanDayOn, planDayOn, startDayPlanner, tellDayPlanner } from '@/shared/scheduling/day/plan-canning-day'
import { writePlan } from '@/shared/scheduling/day/write-plan'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { impossibleReasons } from '@/shared/scheduling/day/refuse-canning-day'
import { type Leaning, mayPlanOn, planOn, startProjectPlanner, tellPlanner } from '@/shared/scheduling/project/plan-project'
import { parseSm } from '@/shared/scheduling/project/parse-sm'

/** A plan as it is written out, with its two figures. */
export type FoundPlan = { readonly makespan: number; readonly lowerBound: number; readonly plan: object }

/** A search that goes on in small steps until it is told to stop. Times are in minutes or units of the file. */
export type PlanSearch = {
  /** Searches a little; false when nothing better can be found. */
  readonly goOn: () => boolean
  /** When the best so far ends; null while no whole plan is found. */
  readonly finish: () => number | null
  /** No plan ends before this. */
  readonly bound: () => number
  /** Somebody else knows a plan that ends then, and that none ends before the bound. */
  readonly hear: (finish: number, bound: number) => void
  /** The best so far, written out; null while no whole plan is found. */
  readonly best: () => FoundPlan | null
  /** Why nothing was found, for when `best` stays null. */
  readonly reasons: () => readonly string[]
}

/** Why a file gives no search: it is not as described, or no plan of it can exist. */
export type NoSearch = { readonly kind: 'not-as-described' | 'impossible'; readonly reasons: readonly string[] }

/** Starts the search for a `canning-day/1` file, or for a project file whose name ends in `.sm`. */
export function searchFile(name: string, text: string, seed: number, leaning: Leaning): Result<PlanSearch, NoSearch> {
  return name.toLowerCase().endsWith('.sm') ? searchProject(text, seed, leaning) : searchDay(text, seed, leaning)
}

function searchProject(text: string, seed: number, leaning: Leaning): Result<PlanSearch, NoSearch> {
  const project = parseSm(text)
  if (!project.ok) return refuse({ kind: 'not-as-described', reasons: [`${project.problem.field}: ${project.problem.message}`] })
  const planner = startProjectPlanner(project.value, seed, leaning)
  return ok({
    goOn: () => {
      planOn(planner, 1)
      return mayPlanOn(planner)
    },
    finish: () => planner.best.makespan,
    bound: () => planner.bound,
    hear: (finish, bound) => tellPlanner(planner, finish, bound),
    best: () => {
      const { starts, makespan } = planner.best
      const lowerBound = Math.min(planner.bound, makespan)
      return { makespan, lowerBound, plan: { format: 'rcpsp-plan/1', starts, makespan, lowerBound } }
    },
    reasons: () => [],
  })
}

function searchDay(text: string, seed: number, leaning: Leaning): Result<PlanSearch, NoSearch> {
  const json = readJson(text)
  if (!json.ok) return json
  const day = parseCanningDay(json.value)
  if (!day.ok) return refuse({ kind: 'not-as-described', reasons: [`${day.problem.field}: ${day.problem.message}`] })
  const model = modelOf(day.value)
  const { grid, close, batches } = day.value
  const first = finishBound(model)
  const impossible = impossibleReasons(model, first)
  if (impossible.length > 0) return refuse({ kind: 'impossible', reasons: impossible.map(({ reason }) => reason) })
  const planner = startDayPlanner(model, first.slot, seed, leaning)
  const { search } = planner
  return ok({
    goOn: () => {
      planDayOn(planner)
      return mayPlanDayOn(planner)
    },
    finish: () => search.best && search.best.finish * grid,
    bound: () => planner.bound * grid,
    hear: (finish, bound) => tellDayPlanner(planner, Math.round(finish / grid), Math.round(bound / grid)),
    best: () => {
      if (!search.best) return null
      const plan = writePlan(model, search.best, planner.bound)
      return { makespan: plan.makespan, lowerBound: plan.lowerBound, plan }
    },
    reasons: () => {
      if (planner.bound > model.slots) return [`no plan of this day ends by closing at minute ${close}: every timetable was ruled out`]
      const waiting = search.waiting.map((index) => batches[index]?.id ?? '')
      return [
        `no plan was found that ends by closing at minute ${close}; ${waiting.length} of ${batches.length} batches found no place: ${waiting.slice(0, 8).join(', ')}`,
        `${first.because} alone need until minute ${first.slot * grid} of ${close}`,
      ]
    },
  })
}

function readJson(text: string): Result<unknown, NoSearch> {
  try {
    return ok(JSON.parse(text))
  } catch (error) {
    return refuse({
      kind: 'not-as-described',
      reasons: [
        `the file is not JSON (${error instanceof Error ? error.message : 'unreadable'}); a project file needs a name that ends in .sm`,
      ],
    })
  }
}
