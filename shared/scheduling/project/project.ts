/** One way of doing a task: how long, and how much of each resource while it runs. */
export type Mode = { readonly duration: number; readonly needs: readonly number[] }

/** `after` may begin once `before` has ended and `lag` more units have passed; lag at least 0. */
export type Arc = { readonly before: number; readonly after: number; readonly lag: number }

/**
 * Tasks, what must come before what, and resources with a limit: the common form of project, job shop and flexible job shop problems.
 *
 * Tasks and resources are numbered from 0; times are whole units from 0. Each task has at least one mode.
 */
export type Project = {
  readonly tasks: readonly { readonly modes: readonly Mode[] }[]
  readonly arcs: readonly Arc[]
  readonly capacities: readonly number[]
}

/** A start and a chosen mode for every task. */
export type ProjectSchedule = { readonly starts: readonly number[]; readonly modes: readonly number[]; readonly makespan: number }

/** Why no schedule can exist. Tasks and resources by number. */
export type ProjectProblem =
  | { readonly kind: 'cycle'; readonly tasks: readonly number[] }
  | { readonly kind: 'too-much'; readonly task: number; readonly resource: number; readonly needed: number; readonly capacity: number }
  | { readonly kind: 'unknown-task'; readonly task: number }

/** The first fault that makes a project impossible, or null. */
export function projectProblem(project: Project): ProjectProblem | null {
  const stray = project.arcs.flatMap((arc) => [arc.before, arc.after]).find((task) => !project.tasks[task])
  if (stray !== undefined) return { kind: 'unknown-task', task: stray }
  for (const [task, { modes }] of project.tasks.entries()) {
    const over = modes.map((mode) => mode.needs.findIndex((needed, resource) => needed > (project.capacities[resource] ?? 0)))
    const resource = over[0] ?? -1
    if (over.every((index) => index >= 0)) {
      return { kind: 'too-much', task, resource, needed: modes[0]?.needs[resource] ?? 0, capacity: project.capacities[resource] ?? 0 }
    }
  }
  const order = topologicalOrder(project)
  return order.length === project.tasks.length
    ? null
    : { kind: 'cycle', tasks: project.tasks.map((_, task) => task).filter((task) => !order.includes(task)) }
}

/** Tasks so that each comes after what must come before it; shorter than the tasks when there is a cycle. */
export function topologicalOrder({ tasks, arcs }: Project): number[] {
  const open = tasks.map(() => 0)
  for (const arc of arcs) open[arc.after] = (open[arc.after] ?? 0) + 1
  const after = tasks.map((): number[] => [])
  for (const arc of arcs) after[arc.before]?.push(arc.after)
  const order = tasks.map((_, task) => task).filter((task) => open[task] === 0)
  for (const task of order) {
    for (const next of after[task] ?? []) {
      open[next] = (open[next] ?? 0) - 1
      if (open[next] === 0) order.push(next)
    }
  }
  return order
}

/** The violated rule of a schedule, told for tests and before a plan is shown; null when it holds. */
export function scheduleFault(project: Project, { starts, modes }: ProjectSchedule): string | null {
  const modeOf = (task: number) => project.tasks[task]?.modes[modes[task] ?? 0]
  const endOf = (task: number) => (starts[task] ?? 0) + (modeOf(task)?.duration ?? 0)
  const early = project.arcs.find((arc) => (starts[arc.after] ?? 0) < endOf(arc.before) + arc.lag)
  if (early) return `task ${early.after} begins before task ${early.before} has ended`
  if (starts.some((start) => !(start >= 0))) return 'a task begins before 0'
  for (const [resource, capacity] of project.capacities.entries()) {
    for (const [task, start] of starts.entries()) {
      const together = starts.map((_, other) => other).filter((other) => (starts[other] ?? 0) <= start && start < endOf(other))
      const used = together.reduce((sum, other) => sum + (modeOf(other)?.needs[resource] ?? 0), 0)
      if (used > capacity) return `resource ${resource} gives ${capacity}, ${used} are used when task ${task} begins`
    }
  }
  return null
}
