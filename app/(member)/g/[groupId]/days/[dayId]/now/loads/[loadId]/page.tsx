import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { Facts } from '@/app/_ui/facts'
import { Page } from '@/app/_ui/page'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { requireDayHead } from '@/lib/queries/day-head'
import { type FloorLoadPage, floorLoad } from '@/lib/queries/floor-batch'
import { type FloorChoices, type FloorClock, floorChoices, floorNow } from '@/lib/queries/floor-now'
import type { LoadRow } from '@/lib/queries/floor-rows'
import { may } from '@/shared/access/policy'
import { AFTER_A_FAILED_PROCESS } from '@/shared/floor/unsealed-jars'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayMinders, sayTimes } from '@/shared/wording/say-load'
import { FloorClockStrip } from '../../../_floor/floor-clock-strip'
import '../../../_floor/floor-page.css'
import { LoadActions } from '../../../_floor/load-actions'
import { LoadCard } from '../../../_floor/load-card'
import { GoneWrong } from './gone-wrong'
import { LoadForm } from './load-form'
import { TakeOver } from './take-over'

export const metadata: Metadata = { title: 'Canner load' }

type Props = {
  params: Promise<{ groupId: string; dayId: string; loadId: string }>
  searchParams: Promise<{ batch?: string | string[] }>
}

/** One canner load: what goes in, its clock, what went wrong. `loads/new` is a load that was not planned. */
export default async function LoadPage({ params, searchParams }: Props) {
  const { groupId, dayId, loadId } = await params
  const actor = await requireActor(groupId, 'see-floor')
  const day = await requireDayHead(groupId, dayId)
  const [floor, choices, found] = await Promise.all([
    floorNow(groupId, day, new Date()),
    floorChoices(groupId, day),
    loadId === 'new' ? null : floorLoad(groupId, dayId, loadId),
  ])
  if (loadId !== 'new' && !found) notFound()
  const path = `/g/${groupId}/days/${dayId}`
  const isOpen = day.state === 'running'
  const mayLoad = isOpen && may(actor, 'run-load')
  const waiting = floor.batches.filter((batch) => batch.waiting > 0)
  const { batch: wanted } = await searchParams
  const planned = found ? (floor.planned.get(found.load.code) ?? []) : []
  const ticked = waiting.filter(({ id, code }) => (typeof wanted === 'string' ? id === wanted : planned.includes(code))).map(({ id }) => id)
  const form = { waiting, ticked, choices, groupId, dayId, path }
  return (
    <Page size="floor">
      <FloorClockStrip href={`${path}/now`} place="On now" clock={floor.clock} />
      {found ? (
        <OneLoad {...{ found, clock: floor.clock, mayLoad, form }}>
          <GoneWrong
            page={found}
            mayNote={(isOpen || day.state === 'resting') && may(actor, 'note-jar')}
            mayFail={mayLoad}
            {...{ groupId, dayId, path }}
          />
        </OneLoad>
      ) : (
        <Sheet level={1} lid="domed" title="A load that was not planned">
          {mayLoad && <LoadForm {...form} />}
        </Sheet>
      )}
    </Page>
  )
}

interface OneLoadProps {
  readonly found: FloorLoadPage
  readonly clock: FloorClock
  readonly mayLoad: boolean
  readonly form: {
    waiting: FloorLoadPage['waiting']
    ticked: readonly string[]
    choices: FloorChoices
    groupId: string
    dayId: string
    path: string
  }
  readonly children: React.ReactNode
}

function OneLoad({ found: { load }, clock, mayLoad, form, children }: OneLoadProps) {
  if (load.state === 'planned') {
    return (
      <Sheet level={1} lid="domed" title={`Load ${load.code}`} aside={load.canner}>
        <p>
          Planned: in at {formatClock(load.plannedLoadAt)}, out by {formatClock(load.plannedEmptyAt)}.
        </p>
        {mayLoad && <LoadForm {...form} loadId={load.id} cannerId={load.cannerId} operatorId={load.operatorId} />}
      </Sheet>
    )
  }
  return (
    <div className="station">
      <LoadCard load={load} clock={clock} level={1} />
      {mayLoad && (
        <LoadActions load={load} clock={clock} groupId={form.groupId} dayId={form.dayId} next={`${form.path}/now/loads/${load.id}`} />
      )}
      <Sheet lid="sunk" lidWords="Written down" title={`Load ${load.code}`}>
        <Facts facts={timesOf(load)} />
      </Sheet>
      {mayLoad && <TakeOver load={load} operators={form.choices.operators} groupId={form.groupId} dayId={form.dayId} path={form.path} />}
      {children}
    </div>
  )
}

function timesOf(load: LoadRow) {
  const time = (label: string, at: number | null) => ({ label, value: at === null ? 'not yet' : formatClock(at) })
  return [
    time('Loaded', load.loadedAt),
    { label: 'Minded by', value: sayMinders(load.operator, load.reliefs) ?? 'not written down' },
    ...(load.restarts > 0
      ? [{ label: 'Begun again', value: `${sayTimes(load.restarts)}, last lost ${formatClock(load.temperatureLostAt ?? 0)}` }]
      : []),
    time('At temperature', load.atTemperatureAt),
    time('Heat off', load.processedAt),
    time('Emptied', load.emptiedAt),
    ...(load.state === 'failed' && load.emptiedAt !== null
      ? [
          {
            label: `Its jars can be kept (${AFTER_A_FAILED_PROCESS.hours} h)`,
            value: `until ${formatClock(load.emptiedAt + AFTER_A_FAILED_PROCESS.hours * 60)}: ${AFTER_A_FAILED_PROCESS.source}`,
          },
        ]
      : []),
    ...(load.note ? [{ label: 'Note', value: load.note }] : []),
  ]
}
