import Link from 'next/link'
import { Sheet } from '@/app/_ui/sheet'
import type { Actor } from '@/shared/access/actor'
import { dayWays } from '@/shared/day/day-ways'
import type { DayState } from '@/shared/lifecycle/day-states'

type Props = { actor: Pick<Actor, 'role' | 'householdId'>; path: string; state: DayState }

/** All pages of the day that are open to this person, in the order in which they are needed. */
export function DayLinks({ actor, path, state }: Props) {
  return (
    <Sheet lid="sunk" lidWords="To look at" title="The pages of this day">
      <ul className="list day-ways">
        {dayWays(actor, state).map(({ page, label }) => (
          <li key={page}>
            <Link className="way" href={`${path}/${page}`} prefetch={false}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
