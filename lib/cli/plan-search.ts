import { parseCanningDay } from '@/shared/forms/canning-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { improve, mayImprove, startSearch } from '@/shared/scheduling/day/improve-day'
import { impossibleReasons } from '@/shared/scheduling/day/refuse-canning-day'
import { writePlan } from '@/shared/scheduling/day/write-plan'
import { improveProject, mayImproveProject, startProjectSearch } from '@/shared/scheduling/project/improve-project'
import { parseSm } from '@/shared/scheduling/project/parse-sm'

/** A plan as it is written out, with the two figures that are shown while the search runs. */
export type FoundPlan = { readonly makespan: number; readonly lowerBound: number; readonly plan: object }

/** A search that goes on in small steps until it is proved best or told to stop. */
export type PlanSearch = {
  /** Searches a little; true while more may be found. */
  readonly goOn: () => boolean
  /** When the best so far ends, in minutes or units of the file; null while no whole plan is found. */
  readonly finish: () => number | null
  /** The best so far, written out; null while no whole plan is found. */
  readonly best: () => FoundPlan | null
  /** Why nothing was found, for when `best` stays null. */
  readonly reasons: () => readonly string[]
}

/** Why a file gives no search: it is not as described, or no plan of it can exist. */
export type NoSearch = { readonly kind: 'not-as-described' | 'impossible'; readonly reasons: readonly string[] }

/** Starts the search for a `canning-day/1` file, or for a project file whose name ends in `.sm`. */
export function searchFile(name: string, text: string, seed: number): Result<PlanSearch, NoSearch> {
  return name.toLowerCase().endsWith('.sm') ? searchProject(text, seed) : searchDay(text, seed)
}

function searchProject(text: string, seed: number): Result<PlanSearch, NoSearch> {
  const project = parseSm(text)
  if (!project.ok) return refuse({ kind: 'not-as-described', reasons: [`${project.problem.field}: ${project.problem.message}`] })
  const search = startProjectSearch(project.value, seed)
  return ok({
    goOn: () => {
      improveProject(search, 40)
      return mayImproveProject(search)
    },
    finish: () => search.best.makespan,
    best: () => {
      const { starts, makespan } = search.best
      const lowerBound = Math.min(search.bound, makespan)
      return { makespan, lowerBound, plan: { format: 'rcpsp-plan/1', starts, makespan, lowerBound } }
    },
    reasons: () => [],
  })
}

function searchDay(text: string, seed: number): Result<PlanSearch, NoSearch> {
  const json = readJson(text)
  if (!json.ok) return json
  const day = parseCanningDay(json.value)
  if (!day.ok) return refuse({ kind: 'not-as-described', reasons: [`${day.problem.field}: ${day.problem.message}`] })
  const model = modelOf(day.value)
  const bound = finishBound(model)
  const impossible = impossibleReasons(model, bound)
  if (impossible.length > 0) return refuse({ kind: 'impossible', reasons: impossible.map(({ reason }) => reason) })
  const search = startSearch(model, bound.slot, seed)
  return ok({
    goOn: () => {
      improve(search, model.batches.length > 300 ? 2 : 10)
      return mayImprove(search)
    },
    finish: () => search.best && search.best.finish * day.value.grid,
    best: () => {
      if (!search.best) return null
      const plan = writePlan(model, search.best, bound.slot)
      return { makespan: plan.makespan, lowerBound: plan.lowerBound, plan }
    },
    reasons: () => {
      const waiting = search.waiting.map((index) => day.value.batches[index]?.id ?? '')
      const bounded = `${bound.because} alone need until minute ${bound.slot * day.value.grid} of ${day.value.close}`
      return [
        `no plan was found that ends by closing at minute ${day.value.close}; ${waiting.length} of ${day.value.batches.length} batches found no place: ${waiting.slice(0, 8).join(', ')}`,
        bounded,
      ]
    },
  })
}

function readJson(text: string): Result<unknown, NoSearch> {
  try {
    return ok(JSON.parse(text))
  } catch (error) {
    return refuse({ kind: 'not-as-described', reasons: [`the file is not JSON: ${error instanceof Error ? error.message : 'unreadable'}`] })
  }
}
