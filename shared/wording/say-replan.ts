import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanLock } from '@/shared/planning/day-problem'
import type { Setback } from '@/shared/planning/day-so-far'
import type { DropReason, Dropped } from '@/shared/planning/jobs-left'
import { lockedBatchId } from '@/shared/planning/locks'
import type { PlanChanges, TaskChange, WhenAndWhere } from '@/shared/planning/plan-changes'
import type { PlanNews } from '@/shared/planning/plan-standing'
import type { BrokenWait } from '@/shared/planning/replan-day'
import type { HandOver } from '@/shared/planning/stand-of-day'
import type { Untrue } from '@/shared/planning/still-true'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { notNow, type Refusal } from '@/shared/wording/refusal'

type Named = { readonly id: string } & ({ readonly label: string } | { readonly name: string })

const named = (list: readonly Named[], id: string | null): string => {
  const found = list.find((each) => each.id === id)
  return found === undefined ? '' : 'label' in found ? found.label : found.name
}

const titleOf = ({ preparations }: DayProblem, id: string): string => preparations.find((each) => each.id === id)?.title ?? ''

const equipment = (problem: DayProblem, id: string | null) => named([...problem.canners, ...problem.kettles], id)

/** "Canner 2 is out from 19:14", for the strip and the list of what changed. */
export function saySetback(problem: DayProblem, setback: Setback): string {
  switch (setback.kind) {
    case 'canner-out':
      return `${named(problem.canners, setback.cannerId)} is out from ${formatClock(setback.from)}${setback.until === null ? '' : ` to ${formatClock(setback.until)}`}`
    case 'person-away':
      return `${named(problem.people, setback.personId)} leaves at ${formatClock(setback.from)}`
    case 'person-late':
      return `${named(problem.people, setback.personId)} comes at ${formatClock(setback.at)}`
    case 'produce-late':
      return `Produce for ${titleOf(problem, setback.preparationId)} comes at ${formatClock(setback.at)}`
    case 'produce-short':
      return `Produce for ${titleOf(problem, setback.preparationId)} is enough for ${setback.batches} ${setback.batches === 1 ? 'batch' : 'batches'}`
    default:
      return setback satisfies never
  }
}

/** "19:10 at Canner 2". */
export function sayWhen(problem: DayProblem, { start, equipmentId }: WhenAndWhere): string {
  const where = equipment(problem, equipmentId)
  return where ? `${formatClock(start)} at ${where}` : formatClock(start)
}

/** One side of a change: where the start and the place stay, only the end is told. "until 19:51". */
export function sayMove(problem: DayProblem, side: WhenAndWhere, other: WhenAndWhere | null): string {
  const isOnlyLonger = other !== null && other.start === side.start && other.equipmentId === side.equipmentId
  return isOnlyLonger ? `until ${formatClock(side.end)}` : sayWhen(problem, side)
}

const WHY_DROPPED: Readonly<Record<DropReason, string>> = {
  abandoned: 'given up',
  'no-produce': 'no produce for it',
  'no-time': 'no time left for it',
  'cannot-wait': 'no canner in time',
  'in-another-load': 'its jars are in another load',
}

/** "J5 and L09 are left out: no time left for it." one sentence a reason. */
export function sayDropped(dropped: readonly Dropped[]): string[] {
  return Object.entries(WHY_DROPPED).flatMap(([why, words]) => {
    const own = dropped.filter((each) => each.why === why)
    if (own.length === 0) return []
    const batches = own.filter(({ of }) => of === 'batch')
    const jars = batches.reduce((sum, each) => sum + each.jars, 0)
    const codes = own.map(({ code }) => code).join(', ')
    return [`Left out, ${words}: ${codes}${jars > 0 ? ` (${jars} jars)` : ''}.`]
  })
}

/** The wait that cannot be met, with its minutes: "J4: 8 jars wait since…". */
export function sayBrokenWait({ code, jars, stage, loadBy, cannerFreeAt }: BrokenWait): string {
  const what =
    stage === 'filled'
      ? `${jars} filled jars of ${code} must be in a canner by ${formatClock(loadBy)}`
      : `${code} in the kettle must be filled and in a canner by ${formatClock(loadBy)}`
  if (cannerFreeAt === null) return `${what}, and no canner is free again today.`
  const late = cannerFreeAt - loadBy
  return late > 0
    ? `${what}; the next canner is free at ${formatClock(cannerFreeAt)}, ${late} min too late.`
    : `${what}, and other jars that wait need the canner first.`
}

/** "Ada hands L05 over to Gil at 20:30.", or that nobody can take it over. */
export function sayHandOver(problem: DayProblem, plan: DayPlan, { from, to, at, loadId, batchId }: HandOver): string {
  const code = loadId ?? plan.batches.find(({ id }) => id === batchId)?.code ?? ''
  return to === null
    ? `Nobody who may is free to take ${code} over from ${named(problem.people, from)} at ${formatClock(at)}. ${loadId ? 'A load is never left alone: somebody trained must stay with it.' : 'Ask somebody who may.'}`
    : `${named(problem.people, from)} hands ${code} over to ${named(problem.people, to)} at ${formatClock(at)}.`
}

const TASK_WORDS: Readonly<Record<PlanLock['task'], string>> = {
  load: 'Loading',
  cook: 'Cooking',
  fill: 'Filling',
  prep: 'Preparing',
  wash: 'Jar washing',
}

/** "Loading of J3: at 19:10, at Canner 2, with Ada." */
export function sayLock(problem: DayProblem, plan: DayPlan, lock: PlanLock): string {
  const code =
    plan.batches.find(({ id }) => id === lockedBatchId(lock))?.code ?? `batch ${lock.batch} of ${titleOf(problem, lock.preparationId)}`
  const parts = [
    lock.at === null ? [] : [`at ${formatClock(lock.at)}`],
    lock.equipmentId === null ? [] : [`at ${equipment(problem, lock.equipmentId)}`],
    lock.personId === null ? [] : [`with ${named(problem.people, lock.personId)}`],
  ].flat()
  return `${TASK_WORDS[lock.task]} of ${code}: ${parts.join(', ')}`
}

/** The plan cannot keep these locks. */
export const sayLocked = (problem: DayProblem, plan: DayPlan, locks: readonly PlanLock[]): Refusal =>
  notNow(
    'plan-locked',
    'No plan keeps what was fixed by hand.',
    `${locks.map((lock) => sayLock(problem, plan, lock)).join('. ')}.`,
    locks.length > 1
      ? 'Unlock any one of them, or choose another minute or person, and plan again.'
      : 'Unlock it, or choose another minute or person, and plan again.',
  )

/** More loads are left of a large day than can be planned anew while somebody waits. */
export const tooMuchLeft = (loads: number): Refusal =>
  notNow(
    'too-much-left',
    `Not planned again: ${loads} loads are still to come.`,
    'That is more than can be planned anew while the kitchen waits.',
    KEEP_TO_IT,
  )

const KEEP_TO_IT =
  'Keep to the plan: each load goes in as soon as its canner is free, and every list shows how late it is. Plan again when fewer are left.'

/**
 * The planner was lost over it or took too long; the plan that stands is untouched.
 *
 * @param why - one sentence
 */
export const replanBrokeOff = (why: string): Refusal =>
  notNow('planning-broke-off', 'Not planned again: the planner broke off.', why, KEEP_TO_IT)

/** Between the planning and the saving, the floor went on. */
export const notPlannedAhead = (): Refusal =>
  notNow(
    'entered-meanwhile',
    'Not planned again: the new plan is not of the day as it is now.',
    'Something was entered while it was planned, or the planner broke off.',
    'Look at the new plan once more and use it.',
  )

/** Somebody else has planned in between. */
export const planMovedOn = (number: number): Refusal =>
  notNow(
    'plan-moved-on',
    'The plan is another one now.',
    `Plan ${number} has been made since this page was loaded.`,
    'Load the page again and look at that plan first.',
  )

/** There is no plan before this one. */
export const sayNothingToUndo = (): Refusal =>
  notNow(
    'nothing-to-undo',
    'There is no earlier plan.',
    'This is the first plan of the day.',
    'Plan the day again, or unlock what was fixed by hand.',
  )

const WHY_UNTRUE: Readonly<Record<Untrue['what'], string>> = {
  'begun-otherwise': 'has begun otherwise since',
  'not-begun': 'should have begun by now',
  out: 'would go into a canner that is out',
  left: 'would be done by somebody who is not there',
  'no-produce': 'has no produce yet',
}

/** The earlier plan is no longer true. */
export function sayUntrue(number: number, untrue: readonly Untrue[]): Refusal {
  const [first] = untrue
  const why = first ? `${first.code} ${WHY_UNTRUE[first.what]}${untrue.length > 1 ? `, and ${untrue.length - 1} more like it` : ''}.` : ''
  return notNow('plan-untrue', `Plan ${number} is no longer true.`, why, 'Plan again from now.')
}

/** "The plan is 12 min behind.", the headline of the strip. */
export const sayBehind = (minutes: number): string =>
  minutes > 0 ? `The plan is ${minutes} min behind.` : 'The plan does not know this yet.'

/** "Canner 2 was restarted at 19:14". */
export function sayNews(problem: DayProblem, news: PlanNews): string {
  switch (news.kind) {
    case 'restart':
      return `${named(problem.canners, news.cannerId)} restarted at ${formatClock(news.at)}: ${news.loadCode} gets its full time again`
    case 'given-up':
      return `${news.loadCode} was given up at ${formatClock(news.at)}`
    case 'late':
      return `${news.loadCode} is ${news.minutes} min late`
    default:
      return news satisfies never
  }
}

/** "From 19:20: finish 21:34, not 21:25." */
export function sayFinishes({ finishBefore, finishAt }: PlanChanges, from: KitchenTime): string {
  const than = finishAt === finishBefore ? 'as before' : `not ${formatClock(finishBefore)}`
  return `From ${formatClock(from)}: finish ${formatClock(finishAt)}, ${than}.`
}

/** That the day would end after everybody must be out; nothing when it does not. */
export function sayOverrun({ window }: DayProblem, plan: DayPlan): string[] {
  const late = plan.cleanUpEndAt - window.hardEnd
  return late > 0
    ? [`Clean-up ends at ${formatClock(plan.cleanUpEndAt)}, ${late} min after everybody must be out. Ask for more time, or for more hands.`]
    : []
}

/** "Was 19:10 at Canner 1", for a person's own list; "New for you" for what was not theirs. */
export const sayWas = (problem: DayProblem, { before, after }: TaskChange): string =>
  before === null ? 'New for you' : `Was ${sayMove(problem, before, after)}`

const KIND_WORDS: Readonly<Record<string, string>> = {
  brief: 'the briefing',
  soak: 'the soak',
  preheat: 'heating the water',
  prep: 'preparing',
  'jar-heat': 'boiling jars',
  cook: 'cooking',
  hold: 'keeping it hot',
  fill: 'filling',
  load: 'loading',
  'come-up': 'minding the canner',
  process: 'minding the canner',
  rest: 'minding the canner',
  unload: 'lifting jars out',
  wash: 'washing jars',
  label: 'labels',
  'clean-up': 'clean-up',
  break: 'a break',
}

/** "No longer yours: filling, 19:10." */
export const sayNoLongerTheirs = (problem: DayProblem, { kind, before }: TaskChange): string =>
  `No longer yours: ${KIND_WORDS[kind] ?? 'work'}${before ? `, ${sayWhen(problem, before)}` : ''}.`
