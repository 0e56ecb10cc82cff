import type { WallStep } from '@/app/_drawings/wall-steps'
import type { DueTask } from '@/shared/planning/now-next-after'
import { sayTask, taskStation } from '@/shared/wording/say-task'
import type { Planned } from '../plan-drawing'

/** Every task in words, with who does it; `due` carries the times that hold now, where the day has begun. */
export function stepsOf({ problem, plan }: Planned, due: readonly DueTask[] = []): WallStep[] {
  return plan.tasks.map((task) => {
    const present = due.find((one) => one.task.id === task.id) ?? task
    const load = plan.loads.find(({ id }) => id === task.loadId)
    const source = task.kind === 'process' && load ? ` (${load.source})` : ''
    return {
      ...{ id: task.id, start: present.start, end: present.end },
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
