import type { FileProblem } from '@/shared/scheduling/file-problem'
import { type Project, projectProblem } from '@/shared/scheduling/project/project'
import { ok, type Result, refuse } from '@/shared/result/result'

/**
 * Reads a single-mode project file of the PSPLIB form (`.sm`): precedence relations, requests and durations, resource availabilities.
 *
 * Source: Kolisch, Sprecher 1996, PSPLIB – A project scheduling problem library, EJOR 96:205-216. Jobs 1 and n are dummies. Job k of the
 * file is task k − 1.
 *
 * @returns the project, or the section and line that is not as described
 */
export function parseSm(text: string): Result<Project, FileProblem> {
  const lines = text.split(/\r\n|\n|\r/).map((line) => line.replace(/\s+/g, ' ').trim())
  const jobs = readCount(lines, /^jobs .*:\s*(\d+)/i)
  if (jobs === null || jobs < 1 || jobs > 5_000)
    return refuse({ field: 'jobs (incl. supersource/sink)', message: 'must be a number from 1 to 5000' })
  const arcs = readRows(lines, 'PRECEDENCE RELATIONS', jobs, 3)
  if (!arcs.ok) return arcs
  const requests = readRows(lines, 'REQUESTS/DURATIONS', jobs, 3)
  if (!requests.ok) return requests
  const capacities = readCapacities(lines)
  if (!capacities.ok) return capacities
  const fault = rowFault(arcs.value, requests.value, capacities.value.length)
  if (fault) return refuse(fault)
  const long = requests.value.reduce((sum, { numbers }) => sum + (numbers[2] ?? 0), 0)
  if (long > MOST_TIME)
    return refuse({ field: 'REQUESTS/DURATIONS', message: `the durations sum to ${long}, at most ${MOST_TIME} are planned` })
  return buildProject(arcs.value, requests.value, capacities.value)
}

/** All durations of a file together; more is a slip, and no clock is that long. */
const MOST_TIME = 2_000_000

type Row = { readonly line: number; readonly numbers: readonly number[] }

function readCount(lines: readonly string[], pattern: RegExp): number | null {
  const found = lines.map((line) => pattern.exec(line)).find((match) => match !== null)
  return found ? Number(found[1]) : null
}

/** The rows of numbers under a heading, one a job. */
function readRows(lines: readonly string[], heading: string, count: number, least: number): Result<Row[], FileProblem> {
  const at = lines.findIndex((line) => line.toUpperCase().startsWith(heading))
  if (at < 0) return refuse({ field: heading, message: 'is missing' })
  const rows: Row[] = []
  for (let line = at + 1; line < lines.length && rows.length < count; line++) {
    const text = lines[line] ?? ''
    if (text.startsWith('***')) break
    if (!/^-?\d/.test(text)) continue
    const numbers = text.split(/\s+/).map(Number)
    if (numbers.length < least || numbers.some((number) => !Number.isInteger(number) || number < 0)) {
      return refuse({ field: `${heading}, line ${line + 1}`, message: 'must be whole numbers of at least 0' })
    }
    rows.push({ line: line + 1, numbers })
  }
  return rows.length === count ? ok(rows) : refuse({ field: heading, message: `has ${rows.length} rows, ${count} jobs are announced` })
}

function readCapacities(lines: readonly string[]): Result<number[], FileProblem> {
  const at = lines.findIndex((line) => line.toUpperCase().startsWith('RESOURCEAVAILABILITIES'))
  const row = lines.slice(at + 1).find((line) => /^\s*\d/.test(line))
  const numbers = (row ?? '').trim().split(/\s+/).filter(Boolean).map(Number)
  if (at < 0 || numbers.length === 0) return refuse({ field: 'RESOURCEAVAILABILITIES', message: 'is missing' })
  if (numbers.some((number) => !Number.isInteger(number) || number < 0))
    return refuse({ field: 'RESOURCEAVAILABILITIES', message: 'must be whole numbers of at least 0' })
  return ok(numbers)
}

/** Job k stands in row k, in one mode, with as many successors and requests as are announced. */
function rowFault(precedence: readonly Row[], requests: readonly Row[], resources: number): FileProblem | null {
  const field = (heading: string, { line }: Row) => `${heading}, line ${line}`
  for (const [index, row] of precedence.entries()) {
    const [job, modes, count = 0] = row.numbers
    const at = field('PRECEDENCE RELATIONS', row)
    if (job !== index + 1) return { field: at, message: `is about job ${job}, job ${index + 1} comes here` }
    if (modes !== 1) return { field: at, message: `job ${job} has ${modes} modes, files with one mode a job are planned` }
    if (row.numbers.length - 3 !== count)
      return { field: at, message: `names ${Math.max(0, row.numbers.length - 3)} successors, ${count} are announced` }
  }
  for (const [index, row] of requests.entries()) {
    const [job] = row.numbers
    const at = field('REQUESTS/DURATIONS', row)
    if (job !== index + 1) return { field: at, message: `is about job ${job}, job ${index + 1} comes here` }
    if (row.numbers.length - 3 !== resources)
      return { field: at, message: `has ${row.numbers.length - 3} requests for ${resources} resources` }
  }
  return null
}

function buildProject(precedence: readonly Row[], requests: readonly Row[], capacities: readonly number[]): Result<Project, FileProblem> {
  const arcs = precedence.flatMap(({ numbers }) => {
    const [job = 0, , count = 0] = numbers
    return numbers.slice(3, 3 + count).map((after) => ({ before: job - 1, after: after - 1, lag: 0 }))
  })
  const tasks = requests.map(({ numbers }) => ({
    modes: [{ duration: numbers[2] ?? 0, needs: capacities.map((_, resource) => numbers[3 + resource] ?? 0) }],
  }))
  const project: Project = { tasks, arcs, capacities }
  const problem = projectProblem(project)
  if (!problem) return ok(project)
  if (problem.kind === 'cycle')
    return refuse({
      field: 'PRECEDENCE RELATIONS',
      message: `jobs ${problem.tasks.map((task) => task + 1).join(', ')} wait for one another in a circle`,
    })
  if (problem.kind === 'unknown-task') return refuse({ field: 'PRECEDENCE RELATIONS', message: `there is no job ${problem.task + 1}` })
  return refuse({
    field: `REQUESTS/DURATIONS, job ${problem.task + 1}`,
    message: `needs ${problem.needed} of resource ${problem.resource + 1}, there are ${problem.capacity}`,
  })
}
