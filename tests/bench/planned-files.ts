import { readdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { parseCanningDay } from '@/shared/forms/canning-day'
import type { CanningDay } from '@/shared/scheduling/day/canning-day'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { mayPlanDayOn, planDayOn, startDayPlanner } from '@/shared/scheduling/day/plan-canning-day'
import { improveFlow, startFlowSearch } from '@/shared/scheduling/flow/order-flow'
import { fewestLoadMinutes } from '@/shared/scheduling/loads/fewest-load-minutes'
import { parseSm } from '@/shared/scheduling/project/parse-sm'
import { mayPlanOn, planOn, startProjectPlanner } from '@/shared/scheduling/project/plan-project'
import type { Project } from '@/shared/scheduling/project/project'
import { scheduleWithWaits } from '@/shared/scheduling/waits/schedule-with-waits'
import { readBatchMachine, readFlexibleJobShop, readFlowShop, readJobShop, readWaitProject } from '../support/read-published'

/** A search of any of the published forms: `goOn` says false when nothing better can be found. */
export type Planned = {
  readonly goOn: () => boolean
  readonly finish: () => number | null
  readonly bound: () => number | null
}

/** Files of instances below a folder, with how to plan each and the best value known if the folder says so. */
export function plannedFiles(folder: string): { readonly name: string; readonly known: number | null; readonly start: () => Planned }[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()
  const known = knownValues(files.map((file) => join(folder, file)))
  return files.flatMap((file) => {
    const path = join(folder, file)
    const start = starterOf(path)
    return start ? [{ name: basename(path), known: known.get(basename(path, '.json')) ?? null, start }] : []
  })
}

/** `optima.csv` (file first, the column `optimum` or the value last known) and `bounds.json` (`id`, `bestKnown`) beside the files. */
function knownValues(paths: readonly string[]): Map<string, number> {
  const known = new Map<string, number>()
  for (const path of paths) {
    if (basename(path) === 'optima.csv') {
      const [heading = '', ...rows] = readFileSync(path, 'utf8').trim().split('\n')
      const column = heading.split(',').findIndex((name) => /optimum/.test(name))
      for (const row of rows) known.set(row.split(',')[0] ?? '', Number(row.split(',')[column]))
    }
    if (basename(path) === 'bounds.json')
      for (const { id, bestKnown } of JSON.parse(readFileSync(path, 'utf8'))) known.set(String(id), Number(bestKnown))
  }
  return known
}

function starterOf(path: string): (() => Planned) | null {
  const text = () => readFileSync(path, 'utf8')
  const name = basename(path)
  const kind = `${basename(dirname(path))} ${name}`
  if (/\.json$/.test(name)) return /"canning-day\/1"/.test(text().slice(0, 200)) ? () => planDay(readDay(text())) : null
  if (/\.sm$/.test(name)) return () => planProject(readSm(text()))
  if (/\.SCH$/i.test(name)) return () => planWaits(text())
  if (!/\.txt$/.test(name)) return null
  if (/flow-?shop|\bta\d/.test(kind)) return () => planFlow(readFlowShop(text()))
  if (/batch-machine|\bp\d+s\d/.test(kind)) return () => planLoads(text())
  if (/flexible|\bmk\d/.test(kind)) return () => planProject(readFlexibleJobShop(text()))
  return () => planProject(readJobShop(text()))
}

function readDay(text: string): CanningDay {
  const day = parseCanningDay(JSON.parse(text))
  if (!day.ok) throw new Error(`${day.problem.field}: ${day.problem.message}`)
  return day.value
}

function readSm(text: string): Project {
  const project = parseSm(text)
  if (!project.ok) throw new Error(`${project.problem.field}: ${project.problem.message}`)
  return project.value
}

/** A day, in minutes after opening. */
export function planDay(day: CanningDay): Planned {
  const model = modelOf(day)
  const planner = startDayPlanner(model, finishBound(model).slot, 1, 'both')
  return {
    goOn: () => {
      planDayOn(planner)
      return mayPlanDayOn(planner)
    },
    finish: () => planner.search.best && planner.search.best.finish * day.grid,
    bound: () => planner.bound * day.grid,
  }
}

function planProject(project: Project): Planned {
  const planner = startProjectPlanner(project, 1, 'both')
  return {
    goOn: () => {
      planOn(planner, 1)
      return mayPlanOn(planner)
    },
    finish: () => planner.best.makespan,
    bound: () => planner.bound,
  }
}

function planWaits(text: string): Planned {
  const answer = scheduleWithWaits(readWaitProject(text), 20_000)
  return { goOn: () => false, finish: () => (answer.starts ? answer.makespan : null), bound: () => answer.bound }
}

function planFlow(times: readonly (readonly number[])[]): Planned {
  const search = startFlowSearch(times, 1)
  const busiest = Math.max(
    ...(times[0] ?? []).map((_, stage) => {
      const [before, after] = [(row: readonly number[]) => sum(row.slice(0, stage)), (row: readonly number[]) => sum(row.slice(stage + 1))]
      return Math.min(...times.map(before)) + sum(times.map((row) => row[stage] ?? 0)) + Math.min(...times.map(after))
    }),
  )
  return {
    goOn: () => {
      improveFlow(search, 5)
      return search.best.makespan > busiest
    },
    finish: () => search.best.makespan,
    bound: () => busiest,
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0)

function planLoads(text: string): Planned {
  const { capacity, jobs } = readBatchMachine(text)
  const items = jobs.map((job) => ({ size: job.size, minutes: job.time }))
  const answer = fewestLoadMinutes(items, capacity)
  return { goOn: () => false, finish: () => answer?.minutes ?? null, bound: () => answer?.bound ?? null }
}
