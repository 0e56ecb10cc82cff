import type { Actor } from '@/shared/access/actor'
import { type Act, may } from '@/shared/access/policy'
import type { DayState } from '@/shared/lifecycle/day-states'

/** One page of a day; `page` follows the day's own address. */
export interface DayWay {
  readonly page: string
  readonly label: string
}

/** From when on a page has something to say. */
type From = 'first' | 'planned' | 'started'

const WAYS: readonly (DayWay & { readonly act: Act; readonly from: From })[] = [
  { page: 'recipes', label: 'Recipes and what is offered', act: 'see-day', from: 'first' },
  { page: 'claims', label: 'Claims: who asks for what', act: 'see-claims', from: 'first' },
  { page: 'pledges', label: 'Promises: what everybody brings', act: 'see-pledges', from: 'first' },
  { page: 'shopping', label: 'Shopping list', act: 'see-shopping', from: 'first' },
  { page: 'reckoning', label: 'Costs: receipts, rules, who owes whom', act: 'see-reckoning', from: 'first' },
  { page: 'work', label: 'Work and jars: who does and gets how much', act: 'see-shares', from: 'first' },
  { page: 'plan', label: 'The timetable', act: 'see-plan', from: 'first' },
  { page: 'what-if', label: 'What if: other ways side by side', act: 'plan-day', from: 'first' },
  { page: 'wall', label: 'The chart for the wall', act: 'see-plan', from: 'planned' },
  { page: 'chart', label: 'The timetable closer: by station, person or product', act: 'see-plan', from: 'planned' },
  { page: 'gaps', label: 'Who is wanted: work that lacks somebody', act: 'see-plan', from: 'planned' },
  { page: 'gaps#work', label: 'Who works how long', act: 'plan-day', from: 'planned' },
  { page: 'mine', label: 'Your own list of work', act: 'see-plan', from: 'planned' },
  { page: 'ingredients', label: 'What came in', act: 'see-floor', from: 'planned' },
  { page: 'now', label: 'On now', act: 'see-floor', from: 'planned' },
  { page: 'seal-check', label: 'Seal check', act: 'check-seals', from: 'started' },
  { page: 'shares', label: 'Shares: who gets what', act: 'see-shares', from: 'started' },
  { page: 'labels', label: 'Labels', act: 'print-labels', from: 'started' },
  { page: 'close-out', label: 'Close-out: jars, lids and bands in balance', act: 'close-day', from: 'started' },
]

const STARTED: readonly DayState[] = ['running', 'resting', 'closed']

/** The pages of a day that are open to this person and have something to say in this state, in the order of the work. */
export function dayWays(actor: Pick<Actor, 'role' | 'householdId'>, state: DayState): DayWay[] {
  const isStarted = STARTED.includes(state)
  const isOpen: Record<From, boolean> = { first: true, planned: isStarted || state === 'planned', started: isStarted }
  return WAYS.filter(({ act, from }) => isOpen[from] && may(actor, act)).map(({ page, label }) => ({ page, label }))
}
