import type { Metadata } from 'next'
import { EmptyState } from '@/app/_ui/empty-state'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { dayFloor } from '@/lib/queries/day-floor'
import { requireDayHead } from '@/lib/queries/day-head'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { changesSinceSeen } from '@/lib/queries/seen-changes'
import type { PlanPerson } from '@/shared/planning/day-problem'
import { dueTasks } from '@/shared/planning/now-next-after'
import { workLoads } from '@/shared/planning/work-load'
import { sayDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayOwnLoad } from '@/shared/wording/say-work-load'
import { ProcessMinutes } from '../_overview/canner-time'
import { DayPlace } from '../_overview/day-place'
import { PersonChoice } from './person-choice'
import { NewOnList } from './new-on-list'
import { WorkList } from './work-list'

export const metadata: Metadata = { title: 'My work' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<{ person?: string | string[]; large?: string | string[] }>
}

/** One person's own list: what, where, when. Whoever has no account is chosen from the list. */
export default async function MyWorkPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-plan')
  const day = await requireDayHead(groupId, dayId)
  const [stored, { actuals, now }] = await Promise.all([readSavedPlan(groupId, dayId), dayFloor(groupId, day, new Date())])
  const { person: wanted, large } = await searchParams
  if (!stored) {
    return (
      <Page size="phone">
        <PageHead kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} after={sayDate(day.date)} />} title="No work yet" />
        <Sheet lid="flat" title="Your list">
          <EmptyState text="Your list stands here as soon as the day is planned." />
        </Sheet>
      </Page>
    )
  }
  const { problem, plan } = stored
  const person = problem.people.find(({ id }) => id === (typeof wanted === 'string' ? wanted : actor.personId))
  const own = person && workLoads(problem, plan).find(({ personId }) => personId === person.id)
  const isLarge = large === undefined ? (person?.limits.includes('large-print') ?? false) : large === 'yes'
  const changes = person ? await changesSinceSeen(groupId, dayId, person.id, stored, now) : new Map()
  const due =
    now === null ? plan.tasks.map((task) => ({ task, start: task.start, end: task.end, lateMinutes: 0 })) : dueTasks(plan, actuals, now)
  return (
    <Page size={isLarge ? 'floor' : 'phone'}>
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} after={`${sayDate(day.date)}, ${day.kitchen.name}`} />}
        title={person ? titleFor(person, person.id === actor.personId) : 'Whose work?'}
        lead={person && `There ${formatClock(person.from)} to ${formatClock(person.until)}. ${own ? sayOwnLoad(own) : ''}`}
      />
      <PersonChoice people={problem.people} chosen={person?.id} isLarge={isLarge} />
      {person ? (
        <>
          <NewOnList {...{ groupId, dayId, stored, person, changes }} isOwn={person.id === actor.personId} />
          <WorkList planned={stored} person={person} due={due} now={now} isOwn={person.id === actor.personId} changes={changes} />
          <ProcessMinutes problem={problem} />
        </>
      ) : (
        <Sheet lid="flat" title="Not in the plan">
          <EmptyState text="You are not in this day’s plan. Choose somebody above, or tell the organiser your hours and what you can do." />
        </Sheet>
      )}
    </Page>
  )
}

const titleFor = ({ name }: PlanPerson, isOwn: boolean) => (isOwn ? 'Your work' : `${name}’s work`)
