import Link from 'next/link'
import { JarGaps } from '@/app/_drawings/jar-gaps'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Sheet } from '@/app/_ui/sheet'
import type { HomeDay } from '@/lib/queries/group-home'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { dayPath, dayStateName } from '@/shared/group/what-wants-you'
import { sayDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'

interface DayListProps {
  readonly actor: Actor
  readonly title: string
  readonly days: readonly HomeDay[]
}

/** Days with their date, hours and state, each leading to the page that its state makes the one to look at. */
export function DayList({ actor, title, days }: DayListProps) {
  const isSettled = days.every(({ state }) => state === 'closed' || state === 'cancelled')
  return (
    <Sheet
      lid={isSettled && days.length > 0 ? 'sunk' : 'flat'}
      lidWords={isSettled && days.length > 0 ? 'Settled' : 'To come'}
      title={title}
    >
      {days.length === 0 ? (
        <EmptyState drawing={<JarGaps />} text={emptyWords(actor)} action={<NewDay actor={actor} />} />
      ) : (
        <ul className="list">
          {days.map((day) => (
            <DayLine key={day.id} actor={actor} day={day} />
          ))}
        </ul>
      )}
    </Sheet>
  )
}

function DayLine({ actor, day }: { actor: Actor; day: HomeDay }) {
  const way = dayPath(actor, day)
  const whole = `/days/${day.id}`
  return (
    <li>
      <Link className="way" href={`/g/${actor.groupId}${way}`} prefetch={false}>
        <span className="slab">{day.name}</span>
      </Link>
      <p>
        {sayDate(day.date)}, {formatClock(day.peopleArriveAt)} to {formatClock(day.hardEnd)}, {day.kitchen}
      </p>
      <p className="quiet">
        {dayStateName(day.state)}
        {day.offered > 0 &&
          may(actor, 'see-claims') &&
          `. ${day.asked} of ${day.offered} jars asked for, ${day.askedByUs} by your household`}
      </p>
      {way !== whole && (
        <Link className="way" href={`/g/${actor.groupId}${whole}`} prefetch={false}>
          All pages of this day<span className="unseen">: {day.name}</span>
        </Link>
      )}
    </li>
  )
}

const emptyWords = (actor: Actor) =>
  may(actor, 'edit-day') ? 'No day yet. Choose a date to see what the kitchen can do.' : 'No day yet. The organiser sets the first one.'

const NewDay = ({ actor }: { actor: Actor }) =>
  may(actor, 'edit-day') ? (
    <LinkButton kind="plain" href={`/g/${actor.groupId}/days/new`}>
      Set a day
    </LinkButton>
  ) : null
