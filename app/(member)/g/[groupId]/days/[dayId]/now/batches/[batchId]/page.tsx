import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import type { ReactNode } from 'react'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry } from '@/app/_forms/entries'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { requireDayHead } from '@/lib/queries/day-head'
import { type FloorBatchPage, floorBatch } from '@/lib/queries/floor-batch'
import { floorChoices, floorClock } from '@/lib/queries/floor-now'
import { may } from '@/shared/access/policy'
import { productName } from '@/shared/day/product-name'
import { formatClock } from '@/shared/time/kitchen-time'
import { SAY_COLD } from '@/shared/wording/say-cold'
import { sayBatches, sayJars } from '@/shared/wording/say-load'
import { FloorClockStrip } from '../../../_floor/floor-clock-strip'
import '../../../_floor/floor-page.css'
import { TimeEntry } from '../../../_floor/time-entry'
import { FillForm } from './fill-form'
import { FillingBegins } from './filling-begins'
import { StartForm } from './start-form'

export const metadata: Metadata = { title: 'Kettle batch' }

type Params = { groupId: string; dayId: string; batchId: string }

/** One kettle batch: put it on, count what it gave, find it a canner. */
export default async function BatchPage({ params }: { params: Promise<Params> }) {
  const { groupId, dayId, batchId } = await params
  const actor = await requireActor(groupId, 'see-floor')
  const day = await requireDayHead(groupId, dayId)
  const [page, choices, clock] = await Promise.all([
    floorBatch(groupId, dayId, batchId),
    floorChoices(groupId, day),
    floorClock(groupId, day, new Date()),
  ])
  if (!page) notFound()
  const { batch } = page
  const path = `/g/${groupId}/days/${dayId}`
  const isOpen = day.state === 'running'
  const mayRun = isOpen && may(actor, 'run-batch')
  const form = { batch, choices, groupId, dayId, path }
  return (
    <Page size="floor">
      <FloorClockStrip href={`${path}/now`} place="On now" clock={clock} />
      <Sheet
        level={1}
        lid={batch.state === 'filled' && batch.waiting === 0 ? 'sunk' : 'domed'}
        title={`Batch ${batch.code}`}
        aside={batch.kettle ?? undefined}
      >
        <p>
          {productName(batch.recipe.title)}, {sayJars(batch.jarsFilled ?? batch.plannedJars, batch.jarSize)}
          {batch.jarsFilled === null && ' planned'}
        </p>
        <Standing page={page} />
        {mayRun && (batch.state === 'planned' || batch.state === 'prepping') && <StartForm {...form} />}
        {mayRun && batch.state === 'cooking' && <FillingBegins batch={batch} groupId={groupId} dayId={dayId} path={path} />}
        {mayRun && (batch.state === 'cooking' || batch.state === 'filling') && <FillForm {...form} />}
        {isOpen && batch.waiting > 0 && may(actor, 'run-load') && <Loads page={page} path={path} />}
      </Sheet>
      {mayRun && <LastResorts {...{ page, groupId, dayId, path }} />}
    </Page>
  )
}

function Standing({ page: { batch, lots, loads } }: { page: FloorBatchPage }) {
  const lines: ReactNode[] = [
    batch.state === 'planned' && `Planned: on at ${formatClock(batch.plannedStart)}, filled by ${formatClock(batch.plannedFilled)}.`,
    batch.startedAt !== null && `On since ${formatClock(batch.startedAt)}.`,
    batch.fillingAt !== null && `First jar at ${formatClock(batch.fillingAt)}.`,
    batch.filledAt !== null && `Filled at ${formatClock(batch.filledAt)}.`,
    batch.isCold && `${SAY_COLD}. No canner takes its jars.`,
    batch.waiting > 0 && `Waiting to be loaded: ${sayJars(batch.waiting, batch.jarSize)}.`,
    loads.length > 0 && `Loaded: ${loads.join(', ')}.`,
    batch.state === 'abandoned' && `Given up. ${batch.note}`,
    lots.length > 0 && `In it: ${lots.map(({ code, item }) => `${code} ${item}`).join(', ')}.`,
  ]
  return lines.filter(Boolean).map((line) => <p key={String(line)}>{line}</p>)
}

function Loads({ page: { batch, openLoads }, path }: { page: FloorBatchPage; path: string }) {
  const first = openLoads.slice(0, 4)
  return (
    <div className="dos">
      <p>Which canner takes {sayBatches([batch.code])}?</p>
      {first.map(({ id, code, canner, plannedLoadAt }, index) => (
        <LinkButton key={id} kind={index === 0 ? 'do' : 'plain'} href={`${path}/now/loads/${id}?batch=${batch.id}`}>
          {canner}, load {code}, planned {formatClock(plannedLoadAt)}
        </LinkButton>
      ))}
      <LinkButton kind={first.length === 0 ? 'do' : 'plain'} href={`${path}/now/loads/new?batch=${batch.id}`}>
        A load that was not planned
      </LinkButton>
    </div>
  )
}

interface LastResortsProps {
  readonly page: FloorBatchPage
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

/** What nobody wants: to give a batch up, or to keep filled jars out of the canners. */
function LastResorts({ page: { batch }, groupId, dayId, path }: LastResortsProps) {
  const form = { groupId, next: `${path}/now`, fixed: { dayId, batchId: batch.id }, className: 'form' }
  if (batch.state === 'filled' && batch.waiting > 0) {
    return (
      <details className="floor-part">
        <summary>These jars go into no canner</summary>
        <CommandForm {...form} command="set-jars-aside" formKey={freshKey()}>
          <RadioEntry
            name="way"
            label="Where do they go?"
            options={[
              { value: 'fridge', label: 'Into the fridge, to be eaten first' },
              { value: 'discard', label: 'Thrown out' },
            ]}
          />
          <TimeEntry id="at-aside" />
          <SubmitButton kind="grave" sending="Sending" consequence="They are not shelf-stable and are shared out to nobody.">
            Set {batch.waiting} aside
          </SubmitButton>
        </CommandForm>
      </details>
    )
  }
  if (batch.state === 'filled' || batch.state === 'abandoned') return null
  return (
    <details className="floor-part">
      <summary>Give this batch up</summary>
      <CommandForm {...form} command="abandon-batch" formKey={freshKey()}>
        <FieldEntry name="why" label="Why?" maxLength={200} />
        <TimeEntry id="at-abandon" />
        <SubmitButton kind="grave" sending="Sending" consequence="It gives no jars. It cannot be taken back.">
          Give {batch.code} up
        </SubmitButton>
      </CommandForm>
    </details>
  )
}
