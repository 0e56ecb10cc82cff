import type { Metadata } from 'next'
import { Button } from '@/app/_ui/button'
import { Checkbox } from '@/app/_ui/checkbox'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { requireDayHead } from '@/lib/queries/day-head'
import { type WhatIf, whatIf } from '@/lib/queries/what-if'
import { MOST_SIDE_BY_SIDE } from '@/shared/day/what-if'
import { sayDate } from '@/shared/time/calendar-date'
import { sayChange } from '@/shared/wording/say-plan'
import { DayPlace } from '../_overview/day-place'
import { AlternativeSheet } from './alternative-sheet'
import './what-if.css'

export const metadata: Metadata = { title: 'What if' }

type Props = { params: Promise<{ groupId: string; dayId: string }>; searchParams: Promise<{ try?: string | string[] }> }

/** The day as it is beside other ways to run it: when it ends, who works how long, what is lost. Nothing is changed by looking. */
export default async function WhatIfPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'plan-day')
  const day = await requireDayHead(groupId, dayId)
  const asked = [(await searchParams).try ?? []].flat()
  const mayPlan = day.state === 'claiming' || day.state === 'planned'
  const compared = mayPlan ? await whatIf(groupId, dayId, asked) : null
  const path = `/g/${groupId}/days/${dayId}`
  return (
    <Page>
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} after={`${sayDate(day.date)}, ${day.kitchen.name}`} />}
        title="What if"
        lead="Each way is worked through to the last canner. Nothing changes by looking."
      />
      {compared ? (
        <>
          <div className="what-if">
            {compared.columns.map((column) => (
              <AlternativeSheet
                key={column.alternative?.key ?? 'as it is'}
                column={column}
                base={compared.columns[0] ?? column}
                isLarge={compared.isLarge}
                groupId={groupId}
                dayId={dayId}
                kitchenId={day.kitchenId}
              />
            ))}
          </div>
          <Choice compared={compared} />
        </>
      ) : (
        <Sheet lid="flat" title="Side by side">
          <EmptyState
            text={
              mayPlan
                ? 'As soon as somebody has asked for jars, other ways stand here side by side.'
                : 'The day has begun, or is not open yet.'
            }
            action={<LinkButton href={path}>Back to the day</LinkButton>}
          />
        </Sheet>
      )}
    </Page>
  )
}

/** Which of them to lay side by side; an ordinary form, so that it works before any script. */
function Choice({ compared: { problem, all, columns } }: { compared: WhatIf }) {
  const shown = new Set(columns.map(({ alternative }) => alternative?.key))
  return (
    <Sheet lid="flat" lidWords="To choose from" title="Other ways" aside={`Up to ${MOST_SIDE_BY_SIDE} side by side.`}>
      <form method="get" className="stack">
        {all.map(({ key, change }) => (
          <Checkbox key={key} name="try" value={key} label={sayChange(problem, change)} checked={shown.has(key)} />
        ))}
        <Button type="submit">Compare</Button>
      </form>
    </Sheet>
  )
}
