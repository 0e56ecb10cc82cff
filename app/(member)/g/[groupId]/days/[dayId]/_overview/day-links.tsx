import { Sheet } from '@/app/_ui/sheet'
import type { DayState } from '@/shared/lifecycle/day-states'

const BEFORE = [
  { page: 'recipes', says: 'Recipes and what is offered' },
  { page: 'claims', says: 'Who asks for what' },
  { page: 'pledges', says: 'What was promised' },
  { page: 'plan', says: 'The timetable' },
]
const ON_THE_DAY = [
  { page: 'mine', says: 'Everybody’s own list' },
  { page: 'wall', says: 'The chart for the wall' },
  { page: 'ingredients', says: 'What came in' },
  { page: 'now', says: 'What is on now' },
]
const AFTER = [
  { page: 'seal-check', says: 'Seal check' },
  { page: 'shares', says: 'Shares' },
  { page: 'labels', says: 'Labels' },
  { page: 'reckoning', says: 'Costs' },
  { page: 'close-out', says: 'Jars, lids and bands in balance' },
]

const STARTED: readonly DayState[] = ['running', 'resting', 'closed']

/** All pages of the day, in the order in which they are needed. */
export function DayLinks({ path, state }: { path: string; state: DayState }) {
  const links = [
    ...BEFORE,
    ...(state === 'planned' || STARTED.includes(state) ? ON_THE_DAY : []),
    ...(STARTED.includes(state) ? AFTER : []),
  ]
  return (
    <Sheet lid="sunk" title="The pages of this day">
      <ul className="list">
        {links.map(({ page, says }) => (
          <li key={page}>
            <a href={`${path}/${page}`}>{says}</a>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
