import type { Metadata } from 'next'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { requireActor } from '@/lib/auth/current-actor'
import { closeOut } from '@/lib/queries/close-out'
import { requireDayHead } from '@/lib/queries/day-head'
import { balanceDay } from '@/shared/share/count-day'
import { sayBalanceLine } from '@/shared/wording/say-balance'
import { sayDayDifference } from '@/shared/wording/say-day-balance'
import { DayPlace } from '../_overview/day-place'
import { BalanceSheets } from './balance-sheets'
import { CloseForm } from './close-form'
import { emptyCounts, lidCount } from './first-counts'

export const metadata: Metadata = { title: 'Close-out' }

/** Every jar, lid and band that came in has gone somewhere; what does not add up is named. */
export default async function CloseOutPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'close-day')
  const [day, page] = await Promise.all([requireDayHead(groupId, dayId), closeOut(groupId, dayId)])
  const path = `/g/${groupId}/days/${dayId}`
  const expected = balanceDay(page.tallies, emptyCounts(page), lidCount(page))
  const lines = page.closed?.lines ?? expected.lines.map((line) => ({ ...line, words: sayBalanceLine(line) }))
  const differences = page.closed?.differences ?? expected.differences.map(sayDayDifference)
  const isOpen = day.state === 'resting'
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title={isOpen || page.closed ? headline(page.closed !== null, expected.unsettled, differences.length) : 'Nothing to close yet'}
        lead={isOpen || page.closed ? lead(page.closed) : NOT_YET}
      />
      {isOpen && expected.unsettled > 0 && <LinkButton href={`${path}/seal-check`}>Check {expected.unsettled} seals first</LinkButton>}
      <div className={isOpen ? 'two' : undefined}>
        {(isOpen || page.closed || page.tallies.length > 0) && (
          <BalanceSheets lines={lines} differences={differences} isClosed={page.closed !== null} />
        )}
        {isOpen && expected.unsettled === 0 && <CloseForm page={page} groupId={groupId} dayId={dayId} />}
      </div>
    </Page>
  )
}

const NOT_YET = 'Jars, lids and bands are counted when the work is over and the jars rest.'

function headline(isClosed: boolean, unsettled: number, differences: number): string {
  if (isClosed) return differences === 0 ? 'Closed, and everything adds up' : 'Closed, with differences that are named'
  if (unsettled > 0) return `${unsettled} jars are not settled yet`
  return 'Count what is left, then close the day'
}

function lead(closed: { readonly note: string; readonly by: string } | null): string | undefined {
  if (!closed) return 'What is counted already stands in the sums; the stock gives the first numbers for the rest.'
  return `Closed by ${closed.by}.${closed.note ? ` ${closed.note}` : ''}`
}
