import { cannerName } from '@/shared/kitchen/methods'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { skillName } from '@/shared/kitchen/skills'
import type { BindingReason, DayPlan, PlanLimit, PlanRefusal, PlanShortage, PlanTaskKind, WayOut } from '@/shared/planning/day-plan'
import { kettleWorkOf } from '@/shared/planning/kettle-works'
import type { DayProblem } from '@/shared/planning/day-problem'
import { sayShorterShifts } from '@/shared/wording/say-shifts'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import type { Refusal } from '@/shared/wording/refusal'

/** "It fits, with 20 canner minutes to spare." */
export function sayFit(plan: DayPlan): string {
  return `It fits, with ${plan.cannerMinutes.slack} canner minutes to spare.`
}

/** "Finish 21:25 because Canner 1 and Canner 2 are busy from 18:00; 10 min to spare." */
export function sayFinish(problem: DayProblem, plan: DayPlan): string {
  return `Finish ${formatClock(plan.finishAt)} because ${sayReason(problem, plan.bindingReason)}; ${plan.bindingReason.slackMinutes} min to spare.`
}

/** What decides once the limit of the finish is lifted: "Without that limit the burners would decide next, at most 20 min sooner."; empty where nothing is known of it. */
export function sayNextLimit({ nextLimit }: DayPlan): string {
  if (!nextLimit) return ''
  const names = { burners: 'the burners', kettles: 'the kettles', 'fill-tables': 'the fill tables' }
  const what = nextLimit.kind === 'people' ? `people for “${skillName(nextLimit.skill)}”` : names[nextLimit.kind]
  if (nextLimit.slackMinutes === 0) return `Lifting that limit alone would not help: ${what} would decide then.`
  return `Without that limit ${what} would decide next, at most ${nextLimit.slackMinutes} min sooner.`
}

/** How good the timetable is: "No timetable for these batches can end sooner.", or by how much one might. */
export function sayBound({ finishAt, lowerBound }: Pick<DayPlan, 'finishAt' | 'lowerBound'>): string {
  const gap = finishAt - lowerBound
  if (gap <= 0) return 'No timetable for these batches can end sooner.'
  return `No timetable for these batches can end before ${formatClock(lowerBound)}; that is at most ${gap} min sooner.`
}

/** "10 loads need 410 of 430 min." */
export function sayCannerMinutes(plan: DayPlan): string {
  const { needed, available } = plan.cannerMinutes
  return `${counted(plan.loads.length, 'load', 'loads')} ${plan.loads.length === 1 ? 'needs' : 'need'} ${needed} of ${available} min.`
}

/** "48 half-pints of jam…": how many jars one preparation is planned to give, with its range. */
export function sayYield(problem: DayProblem, plan: DayPlan, preparationId: string): string {
  const preparation = kettleWorkOf(problem, preparationId)
  const batches = plan.batches.filter((batch) => batch.preparationId === preparationId)
  const sum = (part: 'low' | 'high') => batches.reduce((total, batch) => total + batch.jars[part], 0)
  const [low, high] = [sum('low'), sum('high')]
  const name = preparation ? jarName(preparation.jarSize, high) : 'jars'
  return low === high ? `${low} ${name}` : `${low} to ${high} ${name}`
}

function sayReason(problem: DayProblem, reason: BindingReason): string {
  const from = formatClock(reason.from)
  switch (reason.kind) {
    case 'canners':
      return `${listed(reason.cannerIds.map((id) => problem.canners.find((canner) => canner.id === id)?.label ?? id))} ${reason.cannerIds.length === 1 ? 'is' : 'are'} busy from ${from}`
    case 'kettle':
      return `${listed(reason.kettleIds.map((id) => problem.kettles.find((kettle) => kettle.id === id)?.label ?? id))} ${reason.kettleIds.length === 1 ? 'is' : 'are'} busy from ${from}`
    case 'burners':
      return `every burner is in use at ${from}`
    case 'people':
      return `everybody for “${skillName(reason.skill)}” is busy from ${from}`
    case 'first-load':
      return `nothing may be loaded before ${from}`
    default:
      return reason satisfies never
  }
}

/** Says why a day does not fit, and the first way out that was found to fit. */
export function sayPlanRefusal(problem: DayProblem, refusal: PlanRefusal): Refusal {
  const fitting = refusal.waysOut.filter((way) => way.fits)
  const [first] = fitting
  return {
    code: `plan-${refusal.limit.kind}`,
    status: 422,
    what: refusal.limit.kind === 'bad-number' ? 'No plan: a figure cannot be right.' : 'It does not fit.',
    why: sayLimit(problem, refusal),
    instead: first ? `${sayWayOut(problem, first)}.` : nextStep(refusal.limit),
  }
}

/** "10 loads need 410 min in a canner; 1 boiling-water canner has 215 min." */
export function sayLimit(problem: DayProblem, refusal: Omit<PlanRefusal, 'waysOut'>): string {
  const { limit, needed, available } = refusal
  switch (limit.kind) {
    case 'canner-minutes':
      return `${counted(refusal.loadCount, 'load', 'loads')} ${refusal.loadCount === 1 ? 'needs' : 'need'} ${needed} min in a canner; ${counted(limit.canners, cannerName(limit.method), `${cannerName(limit.method)}s`)} ${limit.canners === 1 ? 'has' : 'have'} ${available} min.`
    case 'no-canner-for-method':
      return `${titleOf(problem, limit.preparationId)} needs a ${cannerName(limit.method)}, and none may be used.${limit.whyNot.map((why) => ` ${why}.`).join('')}`
    case 'canner-too-small':
      return `No canner for ${titleOf(problem, limit.preparationId)} holds ${jarName(limit.jarSize, 2)}.`
    case 'kettle-too-small':
      return available > 0
        ? `One tested batch of ${titleOf(problem, limit.preparationId)} is ${needed} L; the largest kettle for it holds ${available} L.`
        : `One tested batch of ${titleOf(problem, limit.preparationId)} is ${needed} L, and this kitchen has no kettle for it.`
    case 'burners':
      return `${counted(available, 'burner is', 'burners are')} not enough for the canners and the kettles together.`
    case 'kettles':
      return `The kettles are not free in time: ${counted(available, 'kettle', 'kettles')} in all.`
    case 'fill-tables':
      return `${counted(available, 'fill table is', 'fill tables are')} not enough to reach the canners in time.`
    case 'people-with-skill':
      return sayPeople(problem, limit, available, refusal.at)
    case 'headcount':
      return `${needed} people would be in the room at once; ${available} may be.`
    case 'rack':
      return `Up to ${needed} jars have to cool; there is room for ${available}.`
    case 'lead-step':
      return `No household can do the ${limit.label} for ${titleOf(problem, limit.preparationId)} the night before.`
    case 'jars-need-boiling':
      return `${titleOf(problem, limit.preparationId)} runs ${available} min; under ${needed} min the empty jars are boiled first (Complete Guide to Home Canning, Guide 1).`
    case 'hours':
      return `No order of the loads empties the canners by ${formatClock(problem.window.cannersEmptyBy)}.`
    case 'bad-number':
      return `${limit.field} is ${needed}; it must be at least ${available}.`
    default:
      return limit satisfies never
  }
}

function sayPeople(
  problem: DayProblem,
  limit: Extract<PlanLimit, { kind: 'people-with-skill' }>,
  available: number,
  at: KitchenTime | null,
): string {
  const skills = limit.skills.map((skill) => `“${skillName(skill)}”`).join(' or ')
  if (at !== null)
    return `From ${formatClock(at)} ${available === 0 ? 'nobody' : `only ${counted(available, 'person', 'people')}`} with ${skills} ${available > 1 ? 'are' : 'is'} there to ${STAGE_VERBS[limit.stage]}.`
  const who = limit.skills.length > 0 ? ` with ${skills}` : ''
  const what = limit.preparationId ? ` for ${titleOf(problem, limit.preparationId)}` : ''
  return available === 0
    ? `Nobody${who} can ${STAGE_VERBS[limit.stage]}${what}.`
    : `Too few people${who} are free to ${STAGE_VERBS[limit.stage]}${what}.`
}

const STAGE_VERBS: Readonly<Record<PlanTaskKind, string>> = {
  brief: 'give the briefing',
  soak: 'mind the soak',
  preheat: 'heat the water',
  prep: 'prepare the produce',
  'jar-heat': 'boil the jars',
  cook: 'mind the kettle',
  hold: 'mind the kettle',
  fill: 'fill jars',
  load: 'lift jars at the canner',
  'come-up': 'mind the canner',
  process: 'mind the canner',
  rest: 'mind the canner',
  unload: 'lift jars at the canner',
  wash: 'wash jars',
  label: 'write labels',
  'clean-up': 'clean up',
  break: 'take a break',
}

function nextStep(limit: PlanLimit): string {
  switch (limit.kind) {
    case 'bad-number':
      return 'Correct the figure and plan again.'
    case 'headcount':
      return 'Ask some people to come later or leave earlier.'
    case 'rack':
      return 'Add cooling space or plan fewer jars.'
    case 'lead-step':
      return 'Ask a household that may handle it to take a tub.'
    case 'no-canner-for-method':
      return 'Bring or test a canner of that kind, or leave this recipe out.'
    case 'canner-too-small':
      return 'Choose another jar size that the tested recipe allows, or another canner.'
    case 'kettle-too-small':
      return 'Enter a kettle that holds it among the equipment of the kitchen, or leave this recipe out.'
    case 'jars-need-boiling':
      return 'Boil the jars in a pot, or run the process 10 min.'
    case 'people-with-skill':
      return 'Ask somebody who can, or leave this recipe out.'
    default:
      return 'Plan fewer jars, or find another time.'
  }
}

/** A change as an imperative with its measured effect: "Run 10 min and wash the jars hot: 410 of 430 canner min, finish 21:25". */
export function sayWayOut(problem: DayProblem, way: WayOut): string {
  const { needed, available } = way.cannerMinutes
  return `${sayChanges(problem, way)}: ${needed} of ${available} canner min, ${sayEffect(way)}`
}

/** The change, and whose hours are cut besides: "One more pressure canner, and Eko goes at 12:30". */
export const sayChanges = (problem: DayProblem, { change, besides = [] }: WayOut): string =>
  [sayChange(problem, change), ...(besides.length > 0 ? [`and ${sayShorterShifts(problem, besides)}`] : [])].join(', ')

/** "finish 21:25", or "still 23 boiling-water canner min short". */
export function sayEffect({ fits, finishAt, cannerMinutesByMethod }: WayOut): string {
  if (fits && finishAt !== null) return `finish ${formatClock(finishAt)}`
  const [short] = cannerMinutesByMethod.filter(({ slack }) => slack < 0).sort((a, b) => a.slack - b.slack)
  return short ? `still ${-short.slack} ${cannerName(short.method)} min short` : 'still does not fit'
}

/** What stops the day with this change still: "No, still 23 boiling-water canner min short", "No. 2 fill tables are not enough …". */
export const sayWhyNot = (problem: DayProblem, way: WayOut): string =>
  way.stoppedBy && way.cannerMinutesByMethod.every(({ slack }) => slack >= 0)
    ? `No. ${sayLimit(problem, way.stoppedBy)}`
    : `No, ${sayEffect(way)}`

/** The change alone: "One batch fewer of Plum jam (8 half-pints less)". */
export function sayChange(problem: DayProblem, change: WayOut['change']): string {
  switch (change.kind) {
    case 'jars-washed-hot':
      return `Run ${change.minutes} min where it is less, and wash the jars hot`
    case 'jars-boiled-in-pot':
      return `Boil the jars for ${listed(change.preparationIds.map((id) => titleOf(problem, id)))} in a pot on its own burner`
    case 'one-more-canner':
      return `One more ${cannerName(change.method)}${change.withBurner ? ' with a burner of its own' : ''}`
    case 'move-to-pressure':
      return `Move ${counted(change.loads, 'load', 'loads')} of ${titleOf(problem, change.preparationId)} (${change.jars} ${jarsOf(problem, change.preparationId, change.jars)}) to ${listed(change.cannerIds.map((id) => problem.canners.find((canner) => canner.id === id)?.label ?? id))}, which would stand idle`
    case 'other-jars':
      return `Put ${titleOf(problem, change.preparationId)} into ${change.jars} ${jarName(change.jarSize, change.jars)} instead`
    case 'one-more-operator':
      return (change.people ?? 1) === 1
        ? `One more person who minds the ${cannerName(change.method)}s`
        : `${change.people} more people who mind the ${cannerName(change.method)}s`
    case 'fewer-batches':
      return `${counted(change.batches, 'batch', 'batches')} fewer of ${titleOf(problem, change.preparationId)} (${change.jars} ${jarsOf(problem, change.preparationId, change.jars)} less)`
    case 'start-earlier':
      return `Start ${change.minutes} min earlier`
    case 'stay-later':
      return `Stay ${change.minutes} min later`
    case 'one-more-burner':
      return 'One more burner'
    case 'one-more-person':
      return 'One more person who can do every station'
    case 'shorter-shifts':
      return sayShorterShifts(problem, change.shifts)
    case 'drop-preparation':
      return `Leave out ${titleOf(problem, change.preparationId)}`
    default:
      return change satisfies never
  }
}

/** Work that found no hands, in a sentence with a next step. */
export function sayShortage(problem: DayProblem, shortage: PlanShortage): string {
  switch (shortage.kind) {
    case 'jars':
      return `${titleOf(problem, shortage.preparationId)}: ${shortage.wanted} jars are wanted, ${shortage.planned.typical} are planned. They are shared out as a shortage.`
    case 'hands':
      return `Nobody is free to ${STAGE_VERBS[shortage.stage]} (${shortage.minutes} min). Ask one more person.`
    case 'break':
      return `${problem.people.find((person) => person.id === shortage.personId)?.name ?? 'Somebody'} finds no ${shortage.minutes} min for a break. Ask one more person.`
    case 'language':
      return `${problem.people.find((person) => person.id === shortage.personId)?.name ?? 'Somebody'} shares no language with anybody there. Ask somebody who speaks both.`
    default:
      return shortage satisfies never
  }
}

const titleOf = (problem: DayProblem, id: string) => kettleWorkOf(problem, id)?.title ?? 'this recipe'

function jarsOf(problem: DayProblem, id: string, count: number): string {
  const preparation = kettleWorkOf(problem, id)
  return preparation ? jarName(preparation.jarSize, count) : 'jars'
}

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`

function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
