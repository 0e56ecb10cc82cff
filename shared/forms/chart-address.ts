import { z } from 'zod'
import { CHART_VIEWS, type ChartView } from '@/shared/day/chart-rows'
import { CHART_SPANS, type ChartSpan } from '@/shared/drawing/chart-window'
import { formatClock, type KitchenTime, parseClock } from '@/shared/time/kitchen-time'

/** What an address of the chart asks for. What cannot be read is left out: an old link still shows the day. */
export interface ChartAddress {
  readonly view: ChartView
  readonly span: ChartSpan
  readonly from: KitchenTime | null
  readonly isRoll: boolean
}

const Span = z.coerce.number().refine((minutes) => CHART_SPANS.includes(minutes as ChartSpan))

const Address = z.object({
  by: z.enum(CHART_VIEWS).catch('station'),
  span: Span.nullable().catch(null),
  from: z
    .string()
    .transform((text) => {
      const clock = parseClock(text)
      return clock.ok ? clock.value : null
    })
    .catch(() => null),
  paper: z.literal('roll').nullable().catch(null),
})

/** Reads `?by=person&span=60&from=18:30&paper=roll`. */
export function readChartAddress(query: Readonly<Record<string, string | string[] | undefined>>): ChartAddress {
  const { by, span, from, paper } = Address.parse({ by: query.by, span: query.span ?? null, from: query.from, paper: query.paper })
  return { view: by, span: span as ChartSpan, from, isRoll: paper === 'roll' }
}

/** The address, after the page's own, that asks for the same again with some of it changed. */
export function chartAddress({ view, span, from, isRoll }: ChartAddress): string {
  const query = new URLSearchParams({ by: view })
  if (span !== null) query.set('span', String(span))
  if (from !== null) query.set('from', formatClock(from))
  if (isRoll) query.set('paper', 'roll')
  return `?${query}`
}
