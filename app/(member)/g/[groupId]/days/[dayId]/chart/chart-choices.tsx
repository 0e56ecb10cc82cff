import Link from 'next/link'
import { CHART_VIEWS, type ChartView } from '@/shared/day/chart-rows'
import { CHART_SPANS, type ChartSpan, type ChartWindow } from '@/shared/drawing/chart-window'
import { type ChartAddress, chartAddress } from '@/shared/forms/chart-address'
import { formatClock } from '@/shared/time/kitchen-time'

const VIEWS: Readonly<Record<ChartView, string>> = { station: 'By station', person: 'By person', product: 'By product' }
const sayLength = (span: ChartSpan): string =>
  span === null ? 'Whole day' : span < 60 ? `${span} min` : span === 60 ? '1 hour' : `${span / 60} hours`

/** From which side, how near, and on which paper. Each is a link, so it works before the script arrives and can be sent to somebody. */
export function ChartChoices({ address }: { address: ChartAddress }) {
  return (
    <nav className="chart-choices" aria-label="How the timetable is shown">
      <ul>
        {CHART_VIEWS.map((view) => (
          <li key={view}>
            <Choice address={{ ...address, view }} isChosen={view === address.view}>
              {VIEWS[view]}
            </Choice>
          </li>
        ))}
      </ul>
      <ul>
        {CHART_SPANS.map((span) => (
          <li key={String(span)}>
            <Choice address={{ ...address, span, isRoll: false }} isChosen={!address.isRoll && span === address.span}>
              {sayLength(span)}
            </Choice>
          </li>
        ))}
        <li>
          <Choice address={{ ...address, span: null, from: null, isRoll: true }} isChosen={address.isRoll}>
            A roll for the printer
          </Choice>
        </li>
      </ul>
    </nav>
  )
}

function Choice({ address, isChosen, children }: { address: ChartAddress; isChosen: boolean; children: string }) {
  return (
    <Link href={chartAddress(address)} aria-current={isChosen ? 'true' : undefined} prefetch={false} scroll={false}>
      {children}
    </Link>
  )
}

/** What is shown, and the way to what comes before and after it. */
export function ChartTurn({ address, window }: { address: ChartAddress; window: ChartWindow }) {
  const { from, to, earlierFrom, laterFrom } = window
  const way = (start: number | null, words: string) =>
    start !== null && (
      <Choice address={{ ...address, from: start }} isChosen={false}>
        {`${words}, ${formatClock(start)}`}
      </Choice>
    )
  return (
    <div className="chart-choices chart-turn">
      {way(earlierFrom, 'Earlier')}
      <p className="num">
        {formatClock(from)} to {formatClock(to)}
      </p>
      {way(laterFrom, 'Later')}
    </div>
  )
}
