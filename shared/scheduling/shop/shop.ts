import { type Project, topologicalOrder } from '@/shared/scheduling/project/project'

/** A project in which every task takes one machine to itself, of its choice where it has several modes: job shop, flexible job shop. */
export type Shop = {
  readonly count: number
  readonly machines: number
  /** By task: what must come directly before and after it, as [task, lag] pairs, flat. */
  readonly before: readonly (readonly number[])[]
  readonly after: readonly (readonly number[])[]
  /** By task and mode: the machine (−1 for none) and the duration. */
  readonly modes: readonly (readonly { readonly machine: number; readonly duration: number }[])[]
  /** Tasks so that each comes after what must come before it. */
  readonly order: readonly number[]
}

/** The project as a shop, or null when some task takes more than one machine, or less than the whole of one. */
export function shopOf(project: Project): Shop | null {
  const modes = project.tasks.map((task) =>
    task.modes.flatMap((mode) => {
      const used = mode.needs.flatMap((needed, resource) => (needed > 0 && mode.duration > 0 ? [resource] : []))
      if (used.some((resource) => (mode.needs[resource] ?? 0) > (project.capacities[resource] ?? 0))) return []
      const isAlone = used.every((resource) => 2 * (mode.needs[resource] ?? 0) > (project.capacities[resource] ?? 0))
      return [{ isShop: used.length <= 1 && isAlone, machine: used[0] ?? -1, duration: mode.duration }]
    }),
  )
  if (modes.some((choices, task) => choices.length !== project.tasks[task]?.modes.length || choices.some((mode) => !mode.isShop)))
    return null
  const before = project.tasks.map((): number[] => [])
  const after = project.tasks.map((): number[] => [])
  for (const arc of project.arcs) {
    before[arc.after]?.push(arc.before, arc.lag)
    after[arc.before]?.push(arc.after, arc.lag)
  }
  return { count: project.tasks.length, machines: project.capacities.length, before, after, modes, order: topologicalOrder(project) }
}
