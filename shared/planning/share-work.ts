import { type DayCalendar, emptyCalendar, isPersonFree, type Occupation, takePerson } from '@/shared/planning/day-calendar'
import type { PlannedLoad, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import type { WorkingHours } from '@/shared/planning/day-calendar'
import { mayDo } from '@/shared/planning/who-may'

/** How much of their time somebody works: minutes of hands and of minding, against minutes that they are there after the briefing. */
export type WorkShare = {
  readonly personId: string
  readonly workMinutes: number
  readonly availableMinutes: number
  readonly share: number
}

/** Work that may go to somebody else without moving a minute of the plan. */
const MOVABLE: ReadonlySet<PlanTaskKind> = new Set(['prep', 'wash', 'label', 'fill'])

/** Exchanges tried at most; counted, so that every machine stops at the same plan. */
const MOST_MOVES = 200

type People = readonly WorkingHours[]

/** Everybody's share of work, in the order of the list. Briefing, breaks and cleaning up are not counted; minutes at two things at once count once. */
export function workShares(people: People, tasks: readonly PlannedTask[]): WorkShare[] {
  return people.map(({ person, from, until }) => {
    const mine = tasks.filter((task) => isWork(task) && task.peopleIds.includes(person.id)).sort((a, b) => a.start - b.start)
    let workMinutes = 0
    let reached = Number.NEGATIVE_INFINITY
    for (const { start, end } of mine) {
      workMinutes += Math.max(0, end - Math.max(start, reached))
      reached = Math.max(reached, end)
    }
    const availableMinutes = Math.max(0, until - from)
    return { personId: person.id, workMinutes, availableMinutes, share: availableMinutes > 0 ? workMinutes / availableMinutes : 0 }
  })
}

const isWork = ({ kind }: PlannedTask): boolean => kind !== 'brief' && kind !== 'break' && kind !== 'clean-up'

/** The largest share less the smallest: 0 when all work alike. */
export function unfairness(shares: readonly WorkShare[]): number {
  const there = shares.filter(({ availableMinutes }) => availableMinutes > 0).map(({ share }) => share)
  return there.length === 0 ? 0 : Math.max(...there) - Math.min(...there)
}

/**
 * The same tasks at the same minutes, shared out more evenly: work goes from whoever works most of their time to whoever works least and may do
 * it, is free, and keeps their break, as long as that makes the two more alike. Nobody changes at a kettle or a canner.
 *
 * The finish stays; this is the second aim after it.
 *
 * @param mayMove - false for tasks that must stay with their people
 */
export function shareWork(
  problem: DayProblem,
  people: People,
  loads: readonly PlannedLoad[],
  tasks: readonly PlannedTask[],
  preparationOf: (task: PlannedTask) => PlanPreparation | null,
  mayMove: (task: PlannedTask) => boolean = () => true,
): PlannedTask[] {
  let now = [...tasks]
  for (let move = 0; move < MOST_MOVES; move++) {
    const next = betterOnce({ problem, people, loads, preparationOf, mayMove }, now)
    if (!next) return now
    now = next
  }
  return now
}

type Setting = {
  readonly problem: DayProblem
  readonly people: People
  readonly loads: readonly PlannedLoad[]
  readonly preparationOf: (task: PlannedTask) => PlanPreparation | null
  readonly mayMove: (task: PlannedTask) => boolean
}

function betterOnce(setting: Setting, tasks: readonly PlannedTask[]): PlannedTask[] | null {
  const calendars = new Map<string, DayCalendar>()
  const calendarFor = (personId: string): DayCalendar => {
    const calendar = calendars.get(personId) ?? calendarOf(setting, tasks, personId)
    calendars.set(personId, calendar)
    return calendar
  }
  const shares = workShares(setting.people, tasks)
  const order = [...shares].sort((a, b) => b.share - a.share)
  for (const most of order) {
    const mine = tasks.filter((task) => MOVABLE.has(task.kind) && task.peopleIds.includes(most.personId) && setting.mayMove(task))
    for (const least of [...order].reverse()) {
      if (least.share >= most.share) break
      const task = mine.find((each) => isBetter(each, most, least) && canTake(setting, calendarFor, each, least.personId))
      if (task) return tasks.map((each) => (each === task ? handedOver(each, most.personId, least.personId) : each))
    }
  }
  return null
}

/** The two end up more alike: the busier of them, after the exchange, is less busy than the busier was before. */
function isBetter({ start, end, peopleIds }: PlannedTask, most: WorkShare, least: WorkShare): boolean {
  if (peopleIds.includes(least.personId) || least.availableMinutes === 0) return false
  return (least.workMinutes + end - start) / least.availableMinutes < most.share - 1e-9
}

const handedOver = (task: PlannedTask, from: string, to: string): PlannedTask => ({
  ...task,
  peopleIds: task.peopleIds.map((id) => (id === from ? to : id)),
})

function canTake(setting: Setting, calendarFor: (personId: string) => DayCalendar, task: PlannedTask, personId: string): boolean {
  const hours = setting.people.find(({ person }) => person.id === personId)
  const preparation = setting.preparationOf(task)
  if (!hours || !preparation || !MOVABLE.has(task.kind)) return false
  const stage = task.kind as 'prep' | 'wash' | 'label' | 'fill'
  if (!mayDo(hours.person, task.kind, preparation[stage].skills, preparation)) return false
  return isPersonFree(calendarFor(personId), hours, 'hands', task.start, task.end)
}

/** What this person does already; a break is work that nothing goes beside. */
function calendarOf({ problem, loads }: Setting, tasks: readonly PlannedTask[], personId: string): DayCalendar {
  const calendar = emptyCalendar()
  for (const task of tasks) {
    if (!task.peopleIds.includes(personId) || task.end <= task.start || task.kind === 'brief' || task.loadId !== null) continue
    takePerson(calendar, personId, occupationOf(task), task.start, task.end)
  }
  for (const load of loads) {
    const minding = problem.minding.find(({ method }) => method === load.method) ?? null
    if (load.operatorId === personId)
      takePerson(calendar, personId, 'canner-watch', Math.min(load.jarBoilAt, load.loadAt), load.emptyAt, minding)
    if (load.loaderId === personId) takePerson(calendar, personId, 'canner-hands', load.loadAt, load.heatAt)
    if (load.unloaderId === personId) takePerson(calendar, personId, 'canner-hands', load.restEndAt, load.emptyAt)
  }
  return calendar
}

const occupationOf = ({ attention }: PlannedTask): Occupation => (attention === 'watch' ? 'kettle-watch' : 'hands')
