import 'server-only'
import { canonicalJson, sha256 } from '@/lib/commands/canonical-json'
import type { Tx } from '@/lib/db/in-transaction'
import { readDayProblem } from '@/lib/queries/day-problem'
import { readLocks } from '@/lib/queries/replan-input'
import { readPlanChange } from '@/shared/day/apply-plan-change'
import { isSearchedApart } from '@/shared/day/day-size'
import type { DayProblem } from '@/shared/planning/day-problem'
import { ok, type Result, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { planningBrokeOff } from '@/shared/wording/say-search'
import { changedOnce, orNull } from './remembered-plans'

/** What is to be planned of a day now, with the change that the organiser chose; refused when a process is another one than when it was looked up. */
export async function problemToPlan(
  tx: Tx,
  groupId: string,
  dayId: string,
  change: string | null | undefined,
): Promise<Result<DayProblem, Refusal>> {
  const read = await readDayProblem(groupId, dayId, tx)
  if (!read) return refuse(notFound('Canning day'))
  if (read.staleProducts.length > 0) return refuse(processChanged(read.staleProducts))
  const locks = (await readLocks(groupId, dayId, tx)).map(({ id: _, ...lock }) => lock)
  return withChange(locks.length > 0 ? { ...read.problem, locks } : read.problem, change ?? undefined)
}

/** The mark by which the same problem is known again, whatever the order of its keys. */
export const hashOfProblem = (problem: DayProblem): string => sha256(canonicalJson(problem))

async function withChange(problem: DayProblem, text: string | undefined): Promise<Result<DayProblem, Refusal>> {
  if (text === undefined) return ok(problem)
  const change = readPlanChange(text)
  if (change?.kind === 'boiled-in-canners') return refuse(badInput({ change: ['Say on the recipes page how the jars are made ready.'] }))
  if (change?.kind === 'surer' && isSearchedApart(problem)) return refuse(TOO_LARGE_FOR_SURER)
  const changed = change && (await orNull(changedOnce(problem, change)))
  if (changed === null && change) return refuse(planningBrokeOff('The surer plan could not be worked out.'))
  return changed?.ok ? changed : refuse(badInput({ change: ['Choose one of the changes on the page.'] }))
}

/** A surer plan is found by planning the day many times over. */
const TOO_LARGE_FOR_SURER: Refusal = notNow(
  'too-large-for-surer',
  'Not planned: this day is too large for a surer plan.',
  'A surer plan takes many plans of the same day, and one of this day takes minutes.',
  'Plan the day, and leave time to spare by planning fewer jars.',
)

const processChanged = (titles: readonly string[]): Refusal =>
  notNow(
    'process-changed',
    'No plan: a process is another one now.',
    `${titles.join(' and ')}: the published process at this kitchen is not the one that was looked up when the recipe was chosen.`,
    'Open the recipes and say once more how the jars are made ready; the process is then looked up anew.',
  )
