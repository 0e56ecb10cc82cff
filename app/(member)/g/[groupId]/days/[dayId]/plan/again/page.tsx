import type { Metadata } from 'next'
import { CommandForm } from '@/app/_forms/command-form'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { requireDayHead } from '@/lib/queries/day-head'
import { dayStanding } from '@/lib/queries/plan-standing'
import { replanPreview } from '@/lib/queries/replan-preview'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayDropped, sayFinishes, sayNews, sayOverrun, saySetback } from '@/shared/wording/say-replan'
import { DayPlace } from '../../_overview/day-place'
import { CannotWait } from '../../_replan/cannot-wait'
import { WhatMoves } from '../../_replan/what-moves'

export const metadata: Metadata = { title: 'Plan again from now' }

/** What the rest of the day would be if it were planned now: only what moves, old and new side by side. Nothing is saved until it is used. */
export default async function PlanAgainPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'plan-day')
  const day = await requireDayHead(groupId, dayId)
  const at = new Date()
  const [preview, standing] = await Promise.all([replanPreview(groupId, day, at), dayStanding(groupId, day, at)])
  const path = `/g/${groupId}/days/${dayId}`
  const place = <DayPlace groupId={groupId} dayId={dayId} name={day.name} />
  if (!preview || !standing) {
    return (
      <Page>
        <PageHead kicker={place} title="Not now" lead="A day is planned again while it runs." />
        <LinkButton href={`${path}/plan`} kind="plain">
          The timetable
        </LinkButton>
      </Page>
    )
  }
  const { input, outcome } = preview
  const from = formatClock(input.soFar.now)
  if (!outcome.ok) {
    return (
      <Page>
        <PageHead kicker={place} title={`From ${from}: no plan`} />
        <Notice refusal={outcome.problem} />
        {outcome.problem.code === 'plan-locked' && <LinkButton href={`${path}/plan/fixed`}>Fixed by hand</LinkButton>}
        <LinkButton href={`${path}/plan`} kind="plain">
          Leave it as it is
        </LinkButton>
      </Page>
    )
  }
  const replan = outcome.value
  const fresh = standing.setbacks.filter(({ isNew }) => isNew)
  const reason = [
    ...standing.news.map((each) => sayNews(input.problem, each)),
    ...fresh.map(({ setback }) => saySetback(input.problem, setback)),
  ].join('; ')
  return (
    <Page>
      <PageHead kicker={place} title={sayFinishes(replan.changes, input.soFar.now)} lead={reason ? `${reason}.` : undefined} />
      {[...sayOverrun(replan.problem, replan.plan), ...sayDropped(replan.dropped)].map((words) => (
        <p className="said" key={words}>
          {words}
        </p>
      ))}
      <CannotWait replan={replan} />
      <CommandForm
        command="replan-day"
        groupId={groupId}
        formKey={freshKey()}
        next={`${path}/plan`}
        fixed={{ dayId, basedOn: input.number, from: input.soFar.now, reason: reason.slice(0, 200) }}
        className="form"
      >
        <SubmitButton sending="Planning">Use this plan</SubmitButton>
      </CommandForm>
      <LinkButton href={`${path}/now`} kind="plain">
        Leave it as it is
      </LinkButton>
      <WhatMoves before={input.plan} replan={replan} />
      <p className="quiet">What has begun keeps its start, its people and its place. Batches and loads keep their codes.</p>
    </Page>
  )
}
