import type { AbsenceMargin } from '@/shared/planning/absence-margin'
import type { LastStart } from '@/shared/planning/last-start'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type BrokenWait, chanceEndedBy, finishAtChance, type KeptLonger, type PlanReplay } from '@/shared/planning/replay-plan'
import { rangesOf } from '@/shared/planning/stage-ranges'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayChance } from '@/shared/wording/say-chance'

/** "Ends 21:25 if everything takes as long as planned. 8 of 10 such days end by 21:40, 19 of 20 by 21:43." */
export function sayEnds(plan: DayPlan, replay: PlanReplay): string {
  const [eight, nineteen] = [0.8, 0.95].map((chance) => formatClock(finishAtChance(replay, chance)))
  const later = eight === nineteen ? '' : `, 19 of 20 by ${nineteen}`
  return `Ends ${formatClock(plan.finishAt)} if everything takes as long as planned. 8 of 10 such days end by ${eight}${later}.`
}

/** "The canners are to be empty by 21:35: they are in 3 of 10 such days." */
export function sayInTime({ window }: DayProblem, replay: PlanReplay): string {
  const chance = chanceEndedBy(replay, window.cannersEmptyBy)
  return `The canners are to be empty by ${formatClock(window.cannersEmptyBy)}: they are ${sayChance(chance)}.`
}

/** What broke, with what to do: the wait keeps its limit, so the kettle is put on later or the canner is seen to. */
export function sayBrokenWait(plan: DayPlan, wait: BrokenWait): string {
  const code = plan.batches.find(({ id }) => id === wait.batchId)?.code ?? 'A batch'
  const often = sayChance(wait.chance)
  switch (wait.kind) {
    case 'filled-to-loaded':
      return `${code}: ${often} its filled jars would wait longer than ${wait.limitMinutes} min for their canner, up to ${wait.longestMinutes}. Fill it only when the canner is nearly free.`
    case 'cooked-to-filling':
      return `${code}: ${often} it would stand cooked longer than ${wait.limitMinutes} min, up to ${wait.longestMinutes}. Keep a filler free for it.`
    case 'washed-to-filling':
      return `${code}: ${often} its washed jars would stand longer than ${wait.limitMinutes} min and cool. Wash them again, hot.`
    default:
      return wait.kind satisfies never
  }
}

/** "Dov would have to stay up to 10 min longer in 3 of 10 such days." */
export function sayKeptLonger({ people }: DayProblem, kept: KeptLonger): string {
  const name = people.find(({ id }) => id === kept.personId)?.name ?? 'Somebody'
  return `${name} would have to stay up to ${kept.longestMinutes} min longer ${sayChance(kept.chance)}. Ask beforehand, or name somebody who takes over.`
}

/** "If one of the adults stays away it still fits in 5 of 7 ways. It does not fit without Ada or Cleo." */
export function sayAbsence({ people }: DayProblem, { away, tried, fits, missed }: AbsenceMargin): string {
  const who = away === 1 ? 'If one adult stays away' : `If ${away} adults stay away`
  const names = missed.map((id) => people.find((person) => person.id === id)?.name ?? 'somebody')
  if (fits === tried) return `${who}, it still fits in each of ${tried} ways that were tried.`
  const without = names.length > 0 ? ` It does not fit without ${listed(names, 'or')}: ask somebody else to learn it.` : ' Ask more people.'
  return `${who}, it still fits in ${fits} of ${tried} ways.${without}`
}

/** Stages whose spread no recipe gives, so that a reader knows what the figures rest on; empty when all are given. */
export function sayUsualSpread(problem: DayProblem, { runs }: Pick<PlanReplay, 'runs'>): string {
  const stages = (['prep', 'kettle', 'comeUp'] as const).filter((stage) =>
    problem.preparations.some((entry) => entry.jarsWanted > 0 && rangesOf(entry)[stage].basis === 'common practice'),
  )
  if (stages.length === 0) return ''
  return `Reckoned by playing the plan ${runs.toLocaleString('en')} times. How far ${listed(stages.map((stage) => STAGES[stage]))} may stray: common practice, until your own days say better.`
}

const STAGES = { prep: 'cutting', kettle: 'cooking', comeUp: 'the way to the boil' } as const

/** "No new kettle after 20:18 (D) or 20:25 (J)." */
export function sayLastStarts(starts: readonly LastStart[]): string {
  if (starts.length === 0) return ''
  return `No new kettle after ${listed(
    starts.map(({ at, code }) => `${formatClock(at)} (${code})`),
    'or',
  )}.`
}

const listed = (names: readonly string[], word = 'and'): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${word} ${names.at(-1)}`
