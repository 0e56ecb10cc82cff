import type { Metadata } from 'next'
import Link from 'next/link'
import { LookAgain } from '@/app/_shell/look-again'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { requireActor } from '@/lib/auth/current-actor'
import { requireDayHead } from '@/lib/queries/day-head'
import { type FloorNow, floorNow } from '@/lib/queries/floor-now'
import type { LoadRow } from '@/lib/queries/floor-rows'
import { dayStanding } from '@/lib/queries/plan-standing'
import { may } from '@/shared/access/policy'
import { earliestEnd } from '@/shared/floor/process-clock'
import { COOLING } from '@/shared/floor/unsealed-jars'
import { BehindStrip } from '../_replan/behind-strip'
import { BatchCard } from '../_floor/batch-card'
import '../_floor/floor-page.css'
import { FloorClockStrip } from '../_floor/floor-clock-strip'
import { LoadActions } from '../_floor/load-actions'
import { LoadCard } from '../_floor/load-card'
import { DayBook } from './day-book'
import { LastKettles } from './last-kettles'
import { NextList } from './next-list'

export const metadata: Metadata = { title: 'On now' }

/** The floor: every canner and kettle that is at work, with the one thing it wants next. */
export default async function NowPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-floor')
  const day = await requireDayHead(groupId, dayId)
  const at = new Date()
  const [floor, standing] = await Promise.all([floorNow(groupId, day, at), dayStanding(groupId, day, at)])
  const path = `/g/${groupId}/days/${dayId}`
  const isRunning = day.state === 'running'
  const mayRun = isRunning && may(actor, 'run-batch')
  const mayLoad = isRunning && may(actor, 'run-load')
  const loads = atWork(floor.loads)
  const batches = floor.batches.filter(
    ({ state, waiting }) => state === 'cooking' || state === 'filling' || (state === 'filled' && waiting > 0),
  )
  const { now } = floor.clock
  return (
    <Page size="floor">
      <FloorClockStrip href={path} place={day.name} clock={floor.clock} />
      {isRunning && <LookAgain {...{ groupId, dayId }} since={at.getTime()} everySeconds={60} />}
      <h1 className="unseen">On now: {day.name}</h1>
      {!isRunning && <NotRunning state={day.state} path={path} />}
      {standing && <BehindStrip standing={standing} path={path} mayPlan={may(actor, 'plan-day')} />}
      <div className="stations">
        {loads.map((load) => (
          <div className="station" key={load.id}>
            <LoadCard load={load} clock={floor.clock} />
            <Link className="way" href={`${path}/now/loads/${load.id}`} prefetch={false}>
              Load {load.code}: a jar broke, or worse
            </Link>
            {mayLoad && <LoadActions load={load} clock={floor.clock} groupId={groupId} dayId={dayId} next={`${path}/now`} />}
          </div>
        ))}
        {batches.map((batch) => (
          <BatchCard key={batch.id} batch={batch} now={now} path={path} mayRun={mayRun} mayLoad={mayLoad} />
        ))}
      </div>
      <div className="floor-part stations">
        <NextList floor={floor} path={path} />
        <div>
          <Tally floor={floor} />
          {isRunning && <LastKettles groupId={groupId} dayId={dayId} />}
          {isRunning && (
            <Link className="way" href={`${path}/now/changed`} prefetch={false}>
              Something changed: a canner, a person, the produce
            </Link>
          )}
          {isRunning && may(actor, 'note-incident') && (
            <DayBook groupId={groupId} dayId={dayId} path={path} mayRest={may(actor, 'plan-day')} />
          )}
        </div>
      </div>
    </Page>
  )
}

/** Loads in a canner: those whose process runs, by when it ends; then those that heat; then those that cool. */
function atWork(loads: readonly LoadRow[]): LoadRow[] {
  const order = (load: LoadRow) =>
    load.state === 'processing' ? (earliestEnd(load) ?? 0) : load.state === 'cooling-down' ? 20_000 : 10_000
  return loads.filter(({ state }) => state !== 'planned' && state !== 'done' && state !== 'failed').sort((a, b) => order(a) - order(b))
}

function Tally({ floor: { loads, batches } }: { floor: FloorNow }) {
  const filled = batches.reduce((sum, batch) => sum + (batch.jarsFilled ?? 0), 0)
  const done = loads.filter(({ state }) => state === 'done').length
  return (
    <p>
      {filled} jars filled, {done} of {loads.length} loads done.
    </p>
  )
}

interface Said {
  readonly what: string
  readonly instead: string
  readonly source?: string
  readonly page: string
  readonly link: string
}

const SAID: Readonly<Record<string, Said>> = {
  resting: {
    what: 'The jars are resting.',
    instead: COOLING.words,
    source: COOLING.source,
    page: 'seal-check',
    link: 'Seal check',
  },
  closed: { what: 'This day is closed.', instead: 'Look at the shares or the labels.', page: 'shares', link: 'Shares' },
}

function NotRunning({ state, path }: { state: string; path: string }) {
  const said: Said = SAID[state] ?? { what: 'The day has not begun.', instead: 'The organiser starts it.', page: '', link: 'The day' }
  return (
    <>
      <h2>{said.what}</h2>
      <p>{said.instead}</p>
      {said.source && <p className="src">{said.source}.</p>}
      <LinkButton href={said.page ? `${path}/${said.page}` : path}>{said.link}</LinkButton>
    </>
  )
}
