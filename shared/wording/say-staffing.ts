import { skillName } from '@/shared/kitchen/skills'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { StaffingAsk } from '@/shared/planning/staffing-asks'
import { LIFTING } from '@/shared/planning/staffing-demands'
import type { StaffingCell, StaffingGap } from '@/shared/planning/staffing-gaps'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayTask } from '@/shared/wording/say-task'

/** What lacks somebody: "19:05 to 19:30, Filling jars: Fill 8 half-pints of J3." */
export function sayGap(problem: DayProblem, plan: DayPlan, gap: StaffingGap): string {
  const task = plan.tasks.find(({ id }) => id === gap.taskId)
  const codes = plan.batches.find(({ id }) => id === gap.batchId)?.code
  const what = task ? sayTask(problem, plan, task) : `${sayStaffSkill(gap.skill)}${codes ? ` for ${codes}` : ''}.`
  return `${formatClock(gap.start)} to ${formatClock(gap.end)}, ${sayStaffSkill(gap.skill)}: ${what}`
}

/** Why it lacks them: "Gil was to do it and will not be there. One more is wanted." */
export function sayWhyGap(problem: DayProblem, gap: StaffingGap): string {
  const names = (ids: readonly string[]) => ids.map((id) => nameOf(problem, id)).join(' and ')
  const lost = gap.lostIds.length > 0 ? `${names(gap.lostIds)} was to do it and is not there for all of it, or may not do it. ` : ''
  const there = gap.namedIds.length > 0 ? `${names(gap.namedIds)} ${gap.namedIds.length === 1 ? 'is' : 'are'} there. ` : ''
  const missing = gap.wanted - gap.namedIds.length
  return `${lost}${there}${missing === 1 ? 'One more is' : `${missing} more are`} wanted.`
}

/** "Bram has nothing to do then." */
export function sayAsk(problem: DayProblem, plan: DayPlan, ask: StaffingAsk): string {
  const name = nameOf(problem, ask.personId)
  if (ask.how === 'is-free') return `${name} has nothing to do then.`
  if (ask.how === 'come-earlier') return `${name}, if they come ${ask.minutes} min earlier.`
  if (ask.how === 'stay-later') return `${name}, if they stay ${ask.minutes} min longer.`
  const other = plan.tasks.find(({ id }) => id === ask.taskId)
  return `${name}, who would leave: ${other ? sayTask(problem, plan, other) : 'other work.'}`
}

/** "2 of 3": how many are there of those wanted; empty where nobody is wanted. */
export const sayCell = ({ wanted, present }: Pick<StaffingCell, 'wanted' | 'present'>): string =>
  wanted === 0 ? '' : `${present} of ${wanted}`

/** Rows that ask for no training, but for hands or for a stage of the work. */
const WORK: Readonly<Record<string, string>> = {
  [LIFTING]: 'Lifting jars',
  label: 'Labels',
  'clean-up': 'Cleaning up',
  process: 'Minding a canner',
}

/** What a row of the half hours asks for, in words. */
export const sayStaffSkill = (skill: string): string => WORK[skill] ?? skillName(skill)

const nameOf = (problem: DayProblem, id: string): string => problem.people.find((person) => person.id === id)?.name ?? 'Somebody who left'
