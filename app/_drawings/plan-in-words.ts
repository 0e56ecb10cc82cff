import type { LoggedLoad } from '@/app/_drawings/wall-log'
import type { WallStep } from '@/app/_drawings/wall-steps'
import type { DayPlan, PlannedLoad, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { DueTask } from '@/shared/planning/now-next-after'

const WORDS: Readonly<Record<PlanTaskKind, string>> = {
  brief: 'briefing',
  soak: 'soak',
  preheat: 'heat the canner water',
  prep: 'wash and cut',
  'jar-heat': 'heat the jars',
  cook: 'cook',
  hold: 'keep hot',
  fill: 'fill jars',
  load: 'load',
  'come-up': 'come up to the boil or to pressure',
  process: 'process',
  rest: 'rest in the canner',
  unload: 'lift out',
  wash: 'wash jars',
  label: 'make out labels',
  'clean-up': 'clean up',
  break: 'take a break',
}

/** Every task of a plan in words, for the list under the timetable. `due` carries the times that now hold, where the day has begun. */
export function planInWords(problem: DayProblem, plan: DayPlan, due: readonly DueTask[] = []): WallStep[] {
  return plan.tasks.map((task) => {
    const present = due.find((one) => one.task.id === task.id) ?? task
    const load = plan.loads.find((one) => one.id === task.loadId)
    return {
      id: task.id,
      start: present.start,
      end: present.end,
      station: stationOf(problem, task),
      batch: load ? codesOf(plan, load) : plan.batches.find((batch) => batch.id === task.batchId)?.code,
      what: task.kind === 'process' && load ? `${WORDS.process} ${load.processMinutes} min, ${load.source}` : WORDS[task.kind],
      who: problem.people
        .filter((person) => task.peopleIds.includes(person.id))
        .map((person) => person.name)
        .join(', '),
    }
  })
}

/** Every load of a plan with its planned times, for the blank boxes on paper. */
export function loadsToLog(problem: DayProblem, plan: DayPlan): LoggedLoad[] {
  return plan.loads.map((load) => ({
    id: load.id,
    name: `${load.code}, ${codesOf(plan, load)}`,
    canner: labelOf(problem.canners, load.cannerId) ?? load.cannerId,
    loadAt: load.loadAt,
    boilAt: load.boilAt,
    endsAt: load.processEndAt,
    emptyAt: load.emptyAt,
    processMinutes: load.processMinutes,
    source: load.source,
  }))
}

function stationOf(problem: DayProblem, task: PlannedTask): string {
  const table = problem.fillTables > 1 && task.tableIndex !== null ? `Fill table ${task.tableIndex + 1}` : 'Fill table'
  const pot = labelOf(problem.canners, task.cannerId) ?? labelOf(problem.kettles, task.kettleId)
  return pot ?? (task.tableIndex === null ? 'Kitchen' : table)
}

const labelOf = (list: readonly { id: string; label: string }[], id: string | null) => list.find((one) => one.id === id)?.label

const codesOf = (plan: DayPlan, load: PlannedLoad): string =>
  load.batchParts.map((part) => plan.batches.find((batch) => batch.id === part.batchId)?.code ?? part.batchId).join(' ')
