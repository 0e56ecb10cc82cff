import type { Metadata } from 'next'
import { RowChart } from '@/app/_drawings/row-chart'
import { EmptyState } from '@/app/_ui/empty-state'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { dayFloor } from '@/lib/queries/day-floor'
import { requireDayHead } from '@/lib/queries/day-head'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { rowChart } from '@/shared/day/chart-rows'
import { chartStrips, chartWindow } from '@/shared/drawing/chart-window'
import { readChartAddress } from '@/shared/forms/chart-address'
import { sayDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { DayPlace } from '../_overview/day-place'
import { producePatterns } from '../plan-drawing'
import { saysWall } from '../wall/wall-words'
import { ChartChoices, ChartTurn } from './chart-choices'

export const metadata: Metadata = { title: 'The timetable, closer' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

/** The timetable from three sides and as near as ten minutes; on paper as one sheet, or as strips that are joined to a roll. */
export default async function ChartPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'see-plan')
  const day = await requireDayHead(groupId, dayId)
  const [stored, { actuals, now }] = await Promise.all([readSavedPlan(groupId, dayId), dayFloor(groupId, day, new Date())])
  const place = <DayPlace groupId={groupId} dayId={dayId} name={day.name} after={`${sayDate(day.date)}, ${day.kitchen.name}`} />
  if (!stored) {
    return (
      <Page>
        <PageHead kicker={place} title="No timetable yet" />
        <Sheet lid="flat" title="The timetable">
          <EmptyState text="The chart stands here as soon as the day is planned." />
        </Sheet>
      </Page>
    )
  }
  const { problem, plan } = stored
  const address = readChartAddress(await searchParams)
  const chart = rowChart(problem, plan, address.view, actuals, now)
  const window = chartWindow(chart, address.span, address.from, now)
  const produceOf = producePatterns(problem)
  return (
    <Page>
      <PageHead
        kicker={place}
        title={`${saysWall(chart)}.`}
        lead={`Plan ${stored.number}. A thick line under a mark: it fixes the finish.`}
      />
      <ChartChoices address={address} />
      {address.isRoll ? (
        chartStrips(chart, 120).map((strip) => (
          <section
            key={strip.from}
            className="chart-paper chart-strip"
            aria-label={`From ${formatClock(strip.from)} to ${formatClock(strip.to)}`}
          >
            <RowChart chart={chart} window={strip} produceOf={produceOf} />
          </section>
        ))
      ) : (
        <div className="chart-paper">
          <ChartTurn address={address} window={window} />
          <RowChart chart={chart} window={window} produceOf={produceOf} />
        </div>
      )}
    </Page>
  )
}
