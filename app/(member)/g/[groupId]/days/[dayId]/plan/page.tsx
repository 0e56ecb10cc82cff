import type { Metadata } from 'next'
import { LookAgain } from '@/app/_shell/look-again'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { dayProducts } from '@/lib/queries/day-claims'
import { type DayHead, requireDayHead } from '@/lib/queries/day-head'
import { type DayOutlook, dayOutlook } from '@/lib/queries/day-outlook'
import { latestSearch } from '@/lib/queries/plan-search'
import { dayStanding } from '@/lib/queries/plan-standing'
import { triedOutlook } from '@/lib/queries/tried-outlook'
import { may } from '@/shared/access/policy'
import { readPlanList } from '@/shared/forms/plan-list'
import { searchLife } from '@/shared/lifecycle/search-states'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { sayDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayBound, sayFinish, sayNextLimit } from '@/shared/wording/say-plan'
import { DayPlace } from '../_overview/day-place'
import { DoesNotFit } from '../_overview/does-not-fit'
import { LargeDay } from '../_overview/large-day'
import { BehindStrip } from '../_replan/behind-strip'
import { UndoForm } from '../_replan/undo-form'
import { PlanForm } from './plan-form'
import { SearchSheet, titleOfSearch } from './search-sheet'
import { Timetable } from './timetable'

export const metadata: Metadata = { title: 'The timetable' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<{ change?: string | string[]; missing?: string | string[]; list?: string | string[] }>
}

/** The day's timetable: the saved one, or for the organiser the one it would be, with or without a change. */
export default async function PlanPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const at = Date.now()
  const actor = await requireActor(groupId, 'see-plan')
  const { change, missing, list } = await searchParams
  const day = await requireDayHead(groupId, dayId)
  const mayPlan = may(actor, 'plan-day') && (day.state === 'claiming' || day.state === 'planned')
  const tried = mayPlan && typeof change === 'string' ? await triedOutlook(groupId, dayId, change) : null
  const outlook = tried ?? (await readOutlook(groupId, day))
  const standing = await dayStanding(groupId, day, new Date(at))
  const mayFix = may(actor, 'plan-day') && (day.state === 'planned' || day.state === 'running')
  const path = `/g/${groupId}/days/${dayId}`
  const kept: Record<string, string> = tried && typeof change === 'string' ? { change } : {}
  const search = may(actor, 'plan-day') ? await latestSearch(groupId, dayId) : null
  const isSearching = search !== null && !searchLife.isFinal(search.state)
  const isShown = outlook && (outlook.stored !== null || may(actor, 'plan-day'))
  return (
    <Page>
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} after={`${sayDate(day.date)}, ${day.kitchen.name}`} />}
        title={isSearching ? titleOfSearch(search) : isShown ? titleOf(outlook) : 'No timetable yet'}
        lead={isShown && outlook.outcome?.ok ? leadOf(outlook.problem, outlook.outcome.value) : undefined}
        action={
          mayPlan && outlook && !isSearching ? (
            <PlanForm groupId={groupId} dayId={dayId} outlook={outlook} change={tried && typeof change === 'string' ? change : undefined} />
          ) : undefined
        }
      />
      {standing && <BehindStrip standing={standing} path={path} mayPlan={may(actor, 'plan-day')} />}
      {search && <SearchSheet {...{ groupId, dayId, search }} />}
      {tried && <p className="said">This is a try. Nothing is saved until you plan it so.</p>}
      {mayFix && outlook?.stored && !tried && (
        <div className="row">
          {standing && (
            <LinkButton href={`${path}/plan/again`} kind="plain" small>
              Plan again from now
            </LinkButton>
          )}
          <LinkButton href={`${path}/plan/fixed`} kind="plain" small>
            Fix tasks by hand
          </LinkButton>
          <UndoForm groupId={groupId} dayId={dayId} number={outlook.stored.number} path={path} />
        </div>
      )}
      {isShown && outlook.outcome === null && isSearching ? null : isShown ? (
        <Shown
          outlook={outlook}
          dayPath={tried ? undefined : path}
          planPath={mayPlan ? `${path}/plan` : undefined}
          asksWhoMayMiss={mayPlan && missing === 'some'}
          list={readPlanList(list)}
          address={(query) => `${path}/plan?${new URLSearchParams({ ...kept, ...query })}`}
        />
      ) : (
        <NotYet />
      )}
      <LookAgain {...{ groupId, dayId }} since={at} atSearch={isSearching} />
    </Page>
  )
}

async function readOutlook(groupId: string, { id, state }: DayHead): Promise<DayOutlook | null> {
  const products = await dayProducts(groupId, id)
  return dayOutlook(groupId, id, state, new Map(products.map((product) => [product.id, product.offered])))
}

function titleOf({ outcome }: DayOutlook): string {
  if (outcome === null) return 'It is to be planned.'
  if (!outcome.ok) return 'It does not fit.'
  const { finishAt, bindingReason } = outcome.value
  return `Finish ${formatClock(finishAt)}, ${bindingReason.slackMinutes} min to spare.`
}

/** What decides the finish, what would decide next, and how good the timetable is. */
const leadOf = (problem: DayProblem, plan: DayPlan) =>
  [sayFinish(problem, plan), sayNextLimit(plan), sayBound(plan)].filter(Boolean).join(' ')

type ShownProps = Omit<Parameters<typeof Timetable>[0], 'problem' | 'plan'> & { outlook: DayOutlook; dayPath?: string }

function Shown({ outlook: { problem, outcome }, dayPath, ...shown }: ShownProps) {
  if (outcome === null) return <LargeDay problem={problem} />
  if (outcome.ok) return <Timetable {...{ problem, plan: outcome.value, ...shown }} />
  return <DoesNotFit problem={problem} refusal={outcome.problem} dayPath={dayPath} />
}

const NotYet = () => (
  <Sheet lid="flat" title="The timetable">
    <EmptyState text="The timetable stands here as soon as the claims are in and the organiser has planned the day." />
  </Sheet>
)
