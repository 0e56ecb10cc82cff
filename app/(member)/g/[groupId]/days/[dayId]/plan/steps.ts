import type { WallStep } from '@/app/_drawings/wall-steps'
import { sayTask, taskStation } from '@/shared/wording/say-task'
import type { Planned } from '../plan-drawing'

/** Tasks in words, each with who does it; all of the plan's unless some are named. */
export function stepsOf({ problem, plan }: Planned, tasks = plan.tasks): WallStep[] {
  return tasks.map((task) => {
    const load = plan.loads.find(({ id }) => id === task.loadId)
    const source = task.kind === 'process' && load ? ` (${load.source})` : ''
    return {
      ...{ id: task.id, start: task.start, end: task.end },
      station: taskStation(problem, task),
      batch: codesOf({ problem, plan }, task),
      what: `${sayTask(problem, plan, task)}${source}`,
      who: problem.people
        .filter(({ id }) => task.peopleIds.includes(id))
        .map(({ name }) => name)
        .join(', '),
    }
  })
}

function codesOf({ plan }: Planned, { loadId, batchId }: Planned['plan']['tasks'][number]): string {
  const ids = plan.loads.find(({ id }) => id === loadId)?.batchParts.map((part) => part.batchId) ?? [batchId]
  return plan.batches
    .filter(({ id }) => ids.includes(id))
    .map(({ code }) => code)
    .join(' ')
}
