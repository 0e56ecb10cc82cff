import type { Metadata } from 'next'
import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry } from '@/app/_forms/entries'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { type DayHead, requireDayHead } from '@/lib/queries/day-head'
import { type SealLoad, sealCheck } from '@/lib/queries/seal-check'
import { may } from '@/shared/access/policy'
import { dateOf } from '@/shared/floor/date-and-clock'
import { AFTER_A_WHOLE_PROCESS, COOLING } from '@/shared/floor/unsealed-jars'
import { DayPlace } from '../_overview/day-place'
import '../_floor/floor-page.css'
import { LoadJars } from './load-jars'

export const metadata: Metadata = { title: 'Seal check' }

type Props = { params: Promise<{ groupId: string; dayId: string }>; searchParams: Promise<{ load?: string | string[] }> }

/** The morning after: every jar drawn, those whose lid is up marked with a tap, the others sealed in one go. */
export default async function SealCheckPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'check-seals')
  const [day, loads, { load: wanted }] = await Promise.all([requireDayHead(groupId, dayId), sealCheck(groupId, dayId), searchParams])
  const path = `/g/${groupId}/days/${dayId}`
  const isOpen = day.state === 'running' || day.state === 'resting'
  const one = loads.find(({ code }) => code === wanted)
  const shown = one ? [one] : loads
  const waiting = shown.filter(({ jars }) => jars.some(({ state }) => state === 'processed'))
  const checked = shown.filter((load) => !waiting.includes(load))
  const count = waiting.reduce((sum, { jars }) => sum + jars.filter(({ state }) => state === 'processed').length, 0)
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title={titleOf(loads.length, count)}
        lead={`${COOLING.words} Press each lid: if it springs up it is not sealed.`}
        action={count === 0 && loads.length > 0 && may(actor, 'see-shares') && <LinkButton href={`${path}/shares`}>Shares</LinkButton>}
      />
      <p className="src">{COOLING.source}; the same, seal tests.</p>
      {loads.length === 0 && (
        <EmptyState text="No jar has come out of a canner yet." action={<LinkButton href={`${path}/now`}>On now</LinkButton>} />
      )}
      {isOpen && count > 0 && may(actor, 'check-seals') && <CheckForm groupId={groupId} day={day} loads={waiting} only={one} path={path} />}
      <div className="two">
        {checked.map((load) => (
          <LoadJars key={load.id} load={load} mayCheck={false} groupId={groupId} />
        ))}
      </div>
    </Page>
  )
}

function titleOf(loads: number, unchecked: number): string {
  if (loads === 0) return 'No jar to check yet'
  if (unchecked === 0) return 'Every jar is checked'
  return unchecked === 1 ? '1 jar to check' : `${unchecked} jars to check`
}

interface CheckFormProps {
  readonly groupId: string
  readonly day: DayHead
  readonly loads: readonly SealLoad[]
  readonly only: SealLoad | undefined
  readonly path: string
}

function CheckForm({ groupId, day, loads, only, path }: CheckFormProps) {
  const count = loads.reduce((sum, { jars }) => sum + jars.filter(({ state }) => state === 'processed').length, 0)
  return (
    <CommandForm
      command="check-seals"
      groupId={groupId}
      formKey={freshKey()}
      next={`${path}/seal-check`}
      fixed={only ? { dayId: day.id, loadId: only.id } : { dayId: day.id }}
      className="stack"
    >
      <div className="two">
        {loads.map((load) => (
          <div key={load.id}>
            <LoadJars load={load} mayCheck groupId={groupId} />
            {!only && loads.length > 1 && (
              <Link className="way" href={`${path}/seal-check?load=${load.code}`} prefetch={false}>
                Check load {load.code} by itself
              </Link>
            )}
          </div>
        ))}
      </div>
      <Sheet lid="domed" lidWords="To fill in" title="When, and what becomes of those that did not seal">
        <div className="form side">
          <FieldEntry name="on" label="Checked on" type="date" first={dateOf(1440, day.date)} min={day.date} short />
          <FieldEntry name="at" label="At" type="time" short />
          <RadioEntry
            name="way"
            label="Those marked as not sealed go"
            first="fridge"
            options={[
              { value: 'fridge', label: 'into the fridge, to be eaten first' },
              { value: 'again', label: 'through a canner again, hot pack, new lid', disabled: day.state !== 'running' },
              { value: 'discard', label: 'out' },
            ]}
          />
          <p className="src full">
            {AFTER_A_WHOLE_PROCESS.words} {AFTER_A_WHOLE_PROCESS.source}.
          </p>
        </div>
        <SubmitButton sending="Saving">All {count} are checked, the unmarked ones are sealed</SubmitButton>
      </Sheet>
    </CommandForm>
  )
}
