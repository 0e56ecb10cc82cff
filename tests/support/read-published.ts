import type { Arc, Mode, Project } from '@/shared/scheduling/project/project'
import type { WaitProject } from '@/shared/scheduling/waits/wait-project'

const numbersOf = (text: string): number[] =>
  text
    .split('\n')
    .filter((line) => !line.trimStart().startsWith('#'))
    .join(' ')
    .split(/\s+/)
    .filter(Boolean)
    .map(Number)

/** A stream of numbers, one after the other. */
function reader(text: string): () => number {
  const numbers = numbersOf(text)
  let at = 0
  return () => numbers[at++] ?? Number.NaN
}

/** Job shop: jobs, machines, then for each job pairs of machine (from 0) and time. Every machine is a resource with a limit of 1. */
export function readJobShop(text: string): Project {
  const next = reader(text)
  const [jobs, machines] = [next(), next()]
  const tasks: { modes: Mode[] }[] = []
  const arcs: Arc[] = []
  for (let job = 0; job < jobs; job++) {
    for (let step = 0; step < machines; step++) {
      if (step > 0) arcs.push({ before: tasks.length - 1, after: tasks.length, lag: 0 })
      const machine = next()
      tasks.push({ modes: [{ duration: next(), needs: alone(machine, machines) }] })
    }
  }
  return { tasks, arcs, capacities: Array.from({ length: machines }, () => 1) }
}

/** Flexible job shop: jobs, machines, mean choice; then for each job its operations, each with its choices of machine (from 1) and time. */
export function readFlexibleJobShop(text: string): Project {
  const next = reader(text)
  const [jobs, machines] = [next(), next(), next()]
  const tasks: { modes: Mode[] }[] = []
  const arcs: Arc[] = []
  for (let job = 0; job < (jobs ?? 0); job++) {
    const operations = next()
    for (let step = 0; step < operations; step++) {
      if (step > 0) arcs.push({ before: tasks.length - 1, after: tasks.length, lag: 0 })
      const choices = next()
      const modes = Array.from({ length: choices }, () => {
        const machine = next() - 1
        return { duration: next(), needs: alone(machine, machines ?? 0) }
      })
      tasks.push({ modes })
    }
  }
  return { tasks, arcs, capacities: Array.from({ length: machines ?? 0 }, () => 1) }
}

const alone = (machine: number, machines: number): number[] => Array.from({ length: machines }, (_, index) => (index === machine ? 1 : 0))

/** Flow shop: jobs, machines, then a row of times for each job. */
export function readFlowShop(text: string): number[][] {
  const next = reader(text)
  const [jobs, machines] = [next(), next()]
  return Array.from({ length: jobs }, () => Array.from({ length: machines }, next))
}

/** One batch machine: rows of job, time and size; the capacity stands in the comment. */
export function readBatchMachine(text: string): { capacity: number; jobs: { time: number; size: number }[] } {
  const numbers = numbersOf(text)
  const jobs = Array.from({ length: Math.floor(numbers.length / 3) }, (_, index) => ({
    time: numbers[index * 3 + 1] ?? 0,
    size: numbers[index * 3 + 2] ?? 0,
  }))
  return { capacity: Number(/capacity (\d+)/.exec(text)?.[1]), jobs }
}

/** Project with least and longest waits (`.SCH`): jobs with successors and start-to-start lags in brackets, then durations and needs, then limits. */
export function readWaitProject(text: string): WaitProject {
  const lines = text.split('\n').map((line) => line.trim().split(/\s+/).filter(Boolean))
  const count = Number(lines[0]?.[0]) + 2
  const resources = Number(lines[0]?.[1])
  const lags = lines.slice(1, 1 + count).flatMap((fields) => {
    const successors = Number(fields[2])
    return Array.from({ length: successors }, (_, index) => ({
      from: Number(fields[0]),
      to: Number(fields[3 + index]),
      lag: Number((fields[3 + successors + index] ?? '').replace(/[[\]]/g, '')),
    }))
  })
  const tasks = lines
    .slice(1 + count, 1 + 2 * count)
    .map((fields) => ({ duration: Number(fields[2]), needs: fields.slice(3, 3 + resources).map(Number) }))
  return { tasks, lags, capacities: (lines[1 + 2 * count] ?? []).map(Number) }
}
