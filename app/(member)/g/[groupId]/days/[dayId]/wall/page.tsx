import type { Metadata } from 'next'
import { WallActs } from '@/app/_drawings/wall-acts'
import { WallChart } from '@/app/_drawings/wall-chart'
import { WallClock } from '@/app/_drawings/wall-clock'
import { isCrowdedWall } from '@/app/_drawings/wall-frame'
import { WallHead } from '@/app/_drawings/wall-head'
import { WallLog } from '@/app/_drawings/wall-log'
import { LookAgain } from '@/app/_shell/look-again'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { requireActor } from '@/lib/auth/current-actor'
import { dayFloor } from '@/lib/queries/day-floor'
import { type DayHead, requireDayHead } from '@/lib/queries/day-head'
import { readSavedPlan, type StoredPlan } from '@/lib/queries/saved-plan'
import { localMomentOf } from '@/lib/time/local-moment'
import { type WallChart as Chart, wallChart } from '@/shared/planning/wall-chart'
import { plannedLastStarts } from '@/lib/services/day/remembered-plans'
import { sayLastStarts } from '@/shared/wording/say-replay'
import { sayDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { loadsToLog } from '@/app/_drawings/plan-in-words'
import { producePatterns } from '../plan-drawing'
import { saysWall, wallActs, wallLead } from './wall-words'

export const metadata: Metadata = { title: 'The wall' }

/** The whole day on one wall; on paper with boxes for the real times; on a phone the next three things first. */
export default async function WallPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'see-plan')
  const at = new Date()
  const day = await requireDayHead(groupId, dayId)
  const [stored, floor] = await Promise.all([readSavedPlan(groupId, dayId), dayFloor(groupId, day, at)])
  if (!stored) {
    return (
      <Page size="wall">
        <WallHead title="No timetable yet" lead={`${day.name}, ${sayDate(day.date)}`} />
        <EmptyState
          text="The chart hangs here as soon as the day is planned."
          action={<LinkButton href={`/g/${groupId}/days/${dayId}`}>Back to the day</LinkButton>}
        />
      </Page>
    )
  }
  const { problem, plan } = stored
  const { actuals, now } = floor
  const chart = wallChart(problem, plan, actuals, now)
  return (
    <Page size="wall">
      <WallHead
        title={saysWall(chart)}
        lead={`${wallLead(problem, plan, chart)} ${sayLastStarts(plannedLastStarts(problem))}${isCrowdedWall(chart) ? ' Only canners here.' : ''}`}
        clock={clockOf(day, chart, at)}
        printedAt={printedAt(day, stored, at)}
      />
      <WallChart
        chart={chart}
        produceOf={producePatterns(problem)}
        listHref={`/g/${groupId}/days/${dayId}/chart?by=station`}
        says={saysWall(chart)}
        onWall
      />
      <WallActs acts={wallActs(stored, actuals, now)} />
      <WallLog loads={loadsToLog(problem, plan)} />
      {day.state === 'running' && <LookAgain {...{ groupId, dayId }} since={at.getTime()} everySeconds={60} />}
    </Page>
  )
}

/** On the day itself the clock runs; a demo day at another date shows the time its entries have come to. */
function clockOf(day: DayHead, { now }: Chart, at: Date) {
  if (now === null) return undefined
  const isToday = localMomentOf(at, day.timeZone).slice(0, 10) === day.date
  return isToday ? <WallClock serverNow={at.getTime()} zone={day.timeZone} /> : formatClock(now)
}

function printedAt(day: DayHead, { number }: StoredPlan, at: Date): string {
  const moment = localMomentOf(at, day.timeZone)
  return `${sayDate(moment)}, ${moment.slice(11)}. Plan ${number} of ${day.name}, ${sayDate(day.date)}.`
}
