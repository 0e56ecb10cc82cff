import { Suspense } from 'react'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { plannedWaysOut } from '@/lib/services/day/remembered-plans'
import { isSearchedApart } from '@/shared/day/day-size'
import { planChangeText } from '@/shared/day/apply-plan-change'
import type { PlanRefusal, WayOut } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayChanges, sayPlanRefusal, sayWhyNot } from '@/shared/wording/say-plan'

const COLUMNS = [
  { key: 'change', head: 'Change' },
  { key: 'minutes', head: 'Canner min', numeric: true },
  { key: 'fits', head: 'Does it fit?' },
  { key: 'act', head: 'What to do', headHidden: true },
] as const

type Props = {
  problem: DayProblem
  refusal: PlanRefusal
  /** The day's own page, for the links beside what fits; left out where a change is being tried already. */
  dayPath?: string
}

/** Why there is no plan, with the limit that binds, and every way out that was planned again. */
export function DoesNotFit({ problem, refusal, dayPath }: Props) {
  const { what, why, instead } = sayPlanRefusal(problem, refusal)
  return (
    <>
      <Sheet lid="domed" title="What stops it">
        <Notice what={what} why={why} instead={instead} />
      </Sheet>
      {isSearchedApart(problem) ? (
        <Suspense fallback={<NotYet />}>
          <LateWaysOut problem={problem} dayPath={dayPath} />
        </Suspense>
      ) : (
        <WaysOut problem={problem} waysOut={refusal.waysOut} dayPath={dayPath} />
      )}
    </>
  )
}

type WaysOutProps = Pick<Props, 'problem' | 'dayPath'> & { waysOut: readonly WayOut[] }

function WaysOut({ problem, waysOut, dayPath }: WaysOutProps) {
  if (waysOut.length === 0) return null
  const table = (ways: readonly WayOut[], caption: string) => (
    <Table caption={caption} captionHidden columns={COLUMNS} rows={ways.map((way) => rowOf(problem, way, dayPath))} />
  )
  const [fitting, others] = [waysOut.filter(({ fits }) => fits), waysOut.filter(({ fits }) => !fits)]
  return (
    <Sheet lid="domed" title="Ways out" aside="Each one worked through to the last canner.">
      {fitting.length > 0 ? table(fitting, 'Changes that make it fit') : <p>No single change makes it fit. Two together may.</p>}
      {others.length > 0 && (
        <Fold summary={others.length === 1 ? 'One change that is not enough' : `${others.length} changes that are not enough alone`}>
          {table(others, 'Changes that are not enough')}
        </Fold>
      )}
    </Sheet>
  )
}

/** A way out with its measured effect; a limit that is met before any canner is counted has no canner minutes to show. */
const rowOf = (problem: DayProblem, way: WayOut, dayPath: string | undefined) => ({
  id: JSON.stringify([way.change, way.besides]),
  cells: {
    change: sayChanges(problem, way),
    minutes: way.cannerMinutes.available > 0 && `${way.cannerMinutes.needed} of ${way.cannerMinutes.available}`,
    fits: way.finishAt === null ? sayWhyNot(problem, way) : `Yes, canners empty ${formatClock(way.finishAt)}`,
    act: dayPath !== undefined && way.fits && action(way.change, dayPath),
  },
})

/** Of a large day each takes a second or more: the page is there before them. */
async function LateWaysOut({ problem, dayPath }: Pick<Props, 'problem' | 'dayPath'>) {
  const waysOut = await plannedWaysOut(problem)
  if (waysOut) return <WaysOut problem={problem} waysOut={waysOut} dayPath={dayPath} />
  return (
    <Sheet lid="flat" lidWords="Not worked through" title="Ways out">
      <p>Working through the ways out of this day took too long. Change one thing at a time, and look here again.</p>
    </Sheet>
  )
}

const NotYet = () => (
  <Sheet lid="flat" lidWords="Not worked through yet" title="Ways out">
    <p>
      Each way out of this large day is worked through to the last canner. If they do not appear by themselves, load this page again in a
      minute.
    </p>
  </Sheet>
)

/** Where a change is made: tried on the plan, or entered where it belongs. Another pair of hands or a burner has to be found first. */
function action(change: WayOut['change'], dayPath: string) {
  switch (change.kind) {
    case 'fewer-batches':
    case 'drop-preparation':
      return <Go href={`${dayPath}/plan?change=${planChangeText(change)}`} says="Try it" />
    case 'jars-washed-hot':
    case 'jars-boiled-in-pot':
      return <Go href={`${dayPath}/recipes`} says="Change it" />
    case 'start-earlier':
    case 'stay-later':
      return <Go href={`${dayPath}#hours`} says="Change the hours" />
    default:
      return null
  }
}

const Go = ({ href, says }: { href: string; says: string }) => (
  <LinkButton small kind="plain" href={href}>
    {says}
  </LinkButton>
)
