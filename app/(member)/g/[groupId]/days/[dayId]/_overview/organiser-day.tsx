import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import type { DayForecast } from '@/lib/queries/day-forecast'
import type { DayHead } from '@/lib/queries/day-head'
import type { DayOutlook } from '@/lib/queries/day-outlook'
import type { KitchenChoice } from '@/lib/queries/kitchen-choices'
import { plannedSlips } from '@/lib/services/day/remembered-plans'
import type { Actor } from '@/shared/access/actor'
import { isSearchedApart } from '@/shared/day/day-size'
import { dayMeasures } from '@/shared/day/day-measures'
import type { StockLot } from '@/shared/day/supply-check'
import { sayDate } from '@/shared/time/calendar-date'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { sayFit } from '@/shared/wording/say-plan'
import { CannerTime } from './canner-time'
import { DayLinks } from './day-links'
import { DayRunning } from './day-running'
import { DoesNotFit } from './does-not-fit'
import { LargeDay } from './large-day'
import { JarsNow } from './jars-now'
import { NearlyFull } from './nearly-full'
import { NextStep } from './next-step'
import { sayAskedFor } from './say-asked-for'
import { SlipTable } from './slip-table'

interface Props {
  readonly actor: Actor
  readonly day: DayHead
  readonly products: readonly OfferedProduct[]
  readonly outlook: DayOutlook | null
  readonly forecast: DayForecast
  readonly stock: readonly StockLot[]
  readonly kitchens: readonly KitchenChoice[]
}

/** What the day has come to, once it has begun; until then it is asked whether it fits. */
const SAID: Partial<Record<DayHead['state'], string>> = {
  running: 'The day is on.',
  resting: 'The jars are resting.',
  closed: 'The day is closed.',
  cancelled: 'The day was called off.',
}

/** Will it fit, what is nearly full, and what if something slips. */
export function OrganiserDay({ actor, day, products, outlook, forecast, stock, kitchens }: Props) {
  const { groupId } = actor
  const isOver = day.state === 'resting' || day.state === 'closed'
  const path = `/g/${groupId}/days/${day.id}`
  const kicker = `${day.name}, ${sayDate(day.date)}, ${day.kitchen.name}, ${sayElevation(day.kitchen.elevationFeet)}`
  const said = SAID[day.state]
  const title = said ?? (outlook ? titleOf(outlook) : day.name)
  return (
    <Page>
      <PageHead
        kicker={kicker}
        title={title}
        lead={outlook && !isOver ? sayAskedFor(outlook, forecast) : undefined}
        action={
          <NextStep
            groupId={groupId}
            day={day}
            fits={outlook !== null && outlook.outcome?.ok !== false}
            hasOffer={products.some(({ offered }) => offered > 0)}
          />
        }
      />
      {!isOver && outlook?.isOutdated && <Outdated path={path} />}
      {said && <DayLinks actor={actor} path={path} state={day.state} />}
      {!isOver && (outlook ? <Outlook {...{ outlook, day, stock, path }} /> : <NothingYet path={path} state={day.state} />)}
      <JarsNow {...{ day, products, forecast }} />
      {!said && <DayLinks actor={actor} path={path} state={day.state} />}
      <DayRunning {...{ groupId, day, kitchens }} />
    </Page>
  )
}

function titleOf({ outcome }: DayOutlook): string {
  if (outcome === null) return 'It is to be planned.'
  return outcome.ok ? sayFit(outcome.value) : 'It does not fit.'
}

type OutlookProps = { outlook: DayOutlook; day: DayHead; stock: readonly StockLot[]; path: string }

async function Outlook({ outlook: { problem, outcome }, day, stock, path }: OutlookProps) {
  if (outcome === null) return <LargeDay problem={problem} />
  if (!outcome.ok) return <DoesNotFit problem={problem} refusal={outcome.problem} dayPath={path} />
  const plan = outcome.value
  const slips = isSearchedApart(problem) ? null : await plannedSlips(problem, plan)
  return (
    <>
      <CannerTime problem={problem} plan={plan} />
      <NearlyFull measures={dayMeasures(problem, plan, stock, day)} />
      {slips && <SlipTable slips={slips} emptyBy={problem.window.cannersEmptyBy} planPath={`${path}/plan`} />}
    </>
  )
}

const NothingYet = ({ path, state }: { path: string; state: DayHead['state'] }) => (
  <Sheet lid="domed" title="What will be made">
    <EmptyState
      drawing={<TradeSymbol name="jar-gap" height={64} />}
      text={state === 'cancelled' ? 'The day was called off.' : 'No recipe yet. Choose one to see how many jars the kitchen can do.'}
      action={state === 'cancelled' ? undefined : <LinkButton href={`${path}/recipes`}>Choose recipes</LinkButton>}
    />
  </Sheet>
)

const Outdated = ({ path }: { path: string }) => (
  <Sheet lid="domed" title="The plan is of another day">
    <Notice
      what="The timetable no longer fits the day."
      why="Hours, equipment, people or a process changed after it was planned."
      instead={
        <>
          <a href={`${path}/plan`}>plan the day again</a>. Until then the old timetable stands.
        </>
      }
    />
  </Sheet>
)
