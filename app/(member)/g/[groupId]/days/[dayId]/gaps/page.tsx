import type { Metadata } from 'next'
import { EmptyState } from '@/app/_ui/empty-state'
import { Fold } from '@/app/_ui/fold'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { requireDayHead } from '@/lib/queries/day-head'
import { readDayProblem } from '@/lib/queries/day-problem'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { may } from '@/shared/access/policy'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type Staffing, type StaffingGap, staffingGaps } from '@/shared/planning/staffing-gaps'
import { sayDate } from '@/shared/time/calendar-date'
import { sayAsk, sayGap, sayWhyGap } from '@/shared/wording/say-staffing'
import { DayPlace } from '../_overview/day-place'
import { HalfHours } from './half-hours'
import { WorkSheet } from './work-sheet'

export const metadata: Metadata = { title: 'Who is wanted' }

/** Work of the day that lacks somebody, whom to ask, for the organiser who works how long, and how many of each skill are there. */
export default async function GapsPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-plan')
  const day = await requireDayHead(groupId, dayId)
  const [stored, present] = await Promise.all([readSavedPlan(groupId, dayId), readDayProblem(groupId, dayId)])
  const staffing = stored && present ? staffingGaps(withPeopleOf(stored.problem, present.problem), stored.plan) : null
  return (
    <Page>
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} after={`${sayDate(day.date)}, ${day.kitchen.name}`} />}
        title={staffing ? titleOf(staffing) : 'No timetable yet'}
        lead={staffing ? 'Counted anew from everybody’s hours, skills and limits as they are now.' : undefined}
      />
      {stored && present && staffing ? (
        <>
          <Gaps problem={withPeopleOf(stored.problem, present.problem)} plan={stored.plan} staffing={staffing} />
          {may(actor, 'plan-day') && <WorkSheet problem={stored.problem} plan={stored.plan} dayPath={`/g/${groupId}/days/${dayId}`} />}
          <HalfHours staffing={staffing} />
        </>
      ) : (
        <Sheet lid="flat" title="Who is wanted">
          <EmptyState text="What lacks somebody stands here as soon as the day is planned." />
        </Sheet>
      )}
    </Page>
  )
}

/** The timetable people work by, with people as they are now: hours change after a plan is made. */
const withPeopleOf = (planned: DayProblem, { people, households }: DayProblem): DayProblem => ({ ...planned, people, households })

function titleOf({ gaps }: Staffing): string {
  if (gaps.length === 0) return 'All work has its people.'
  return gaps.length === 1 ? 'One piece of work lacks somebody.' : `${gaps.length} pieces of work lack somebody.`
}

/** Written out in full; what comes after them is told in a line each. */
const MOST_IN_FULL = 20
/** Whom to ask first; a list of forty names helps nobody. */
const MOST_ASKED = 6

function Gaps({ problem, plan, staffing: { gaps } }: { problem: DayProblem; plan: DayPlan; staffing: Staffing }) {
  const later = gaps.slice(MOST_IN_FULL)
  return (
    <>
      {gaps.slice(0, MOST_IN_FULL).map((gap, place) => (
        <Sheet key={keyOf(gap)} id={`gap-${place}`} lid="domed" title={sayGap(problem, plan, gap)}>
          <p>{sayWhyGap(problem, gap)}</p>
          {gap.ask.length > 0 ? (
            <>
              <h3>Ask</h3>
              <ul className="list">
                {gap.ask.slice(0, MOST_ASKED).map((ask) => (
                  <li key={ask.personId}>{sayAsk(problem, plan, ask)}</li>
                ))}
                {gap.ask.length > MOST_ASKED && <li>{gap.ask.length - MOST_ASKED} more could be asked.</li>}
              </ul>
            </>
          ) : (
            <p className="why">Nobody else of this day can do it. Ask for somebody with this skill, or plan the day again without it.</p>
          )}
        </Sheet>
      ))}
      {later.length > 0 && (
        <Sheet lid="domed" title={`${later.length} more`}>
          <p>
            Many at once often have one cause: hours or skills that changed. Plan the day again, or see to the first ones and look here
            again.
          </p>
          <Fold summary="All of them, in a line each">
            <ul className="list">
              {later.map((gap) => (
                <li key={keyOf(gap)}>{sayGap(problem, plan, gap)}</li>
              ))}
            </ul>
          </Fold>
        </Sheet>
      )}
    </>
  )
}

const keyOf = (gap: StaffingGap) => `${gap.taskId ?? gap.kind} ${gap.batchId} ${gap.skill} ${gap.start}`
