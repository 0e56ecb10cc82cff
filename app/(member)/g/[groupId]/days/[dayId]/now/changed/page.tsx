import type { Metadata } from 'next'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Page } from '@/app/_ui/page'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { requireDayHead } from '@/lib/queries/day-head'
import { floorClock } from '@/lib/queries/floor-now'
import { type DayStanding, dayStanding } from '@/lib/queries/plan-standing'
import { may } from '@/shared/access/policy'
import type { DayProblem } from '@/shared/planning/day-problem'
import { saySetback } from '@/shared/wording/say-replan'
import { FloorClockStrip } from '../../_floor/floor-clock-strip'
import '../../_floor/floor-page.css'
import { BehindStrip } from '../../_replan/behind-strip'

export const metadata: Metadata = { title: 'Something changed' }

/** What is not as the plan took it to be, in a few taps: a canner out, somebody gone or late, produce late or short. */
export default async function ChangedPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-floor')
  const day = await requireDayHead(groupId, dayId)
  const at = new Date()
  const [standing, clock] = await Promise.all([dayStanding(groupId, day, at), floorClock(groupId, day, at)])
  const path = `/g/${groupId}/days/${dayId}`
  const place = { groupId, dayId, path }
  return (
    <Page size="floor">
      <FloorClockStrip href={`${path}/now`} place="On now" clock={clock} />
      <h1>Something changed</h1>
      {standing ? (
        <>
          <BehindStrip standing={standing} path={path} mayPlan={may(actor, 'plan-day')} />
          {may(actor, 'note-incident') && <Entries {...place} problem={standing.stored.problem} />}
          <OpenSetbacks {...place} standing={standing} mayNote={may(actor, 'note-incident')} />
        </>
      ) : (
        <p>The day does not run, so nothing can change on it.</p>
      )}
    </Page>
  )
}

interface Place {
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

const chosen = (list: readonly { readonly id: string; readonly label?: string; readonly name?: string }[]) =>
  list.map(({ id, label, name }) => ({ value: id, label: label ?? name ?? id }))

function Entries({ groupId, dayId, path, problem }: Place & { problem: DayProblem }) {
  const form = (kind: string) => ({
    command: 'note-setback',
    formKey: freshKey(),
    next: `${path}/now/changed`,
    className: 'form',
    fixed: { dayId, kind },
    groupId,
  })
  const people = chosen(problem.people)
  const products = problem.preparations.map(({ id, title }) => ({ value: id, label: title }))
  return (
    <Sheet lid="flat" lidWords="To note" title="What is it?">
      <Fold summary="A canner is out">
        <CommandForm {...form('canner-out')}>
          <RadioEntry name="cannerId" label="Which canner?" options={chosen(problem.canners)} required across />
          <FieldEntry name="until" type="time" label="Back at" hint="Leave it empty when it is out for today." short required={false} />
          <FieldEntry name="from" type="time" label="Out from" hint="Leave it empty for now." short required={false} />
          <SubmitButton sending="Sending">It is out</SubmitButton>
        </CommandForm>
      </Fold>
      <Fold summary="Somebody leaves">
        <CommandForm {...form('person-away')}>
          <SelectEntry name="personId" label="Who?" ask="Choose" options={people} required />
          <FieldEntry name="from" type="time" label="Leaves at" hint="Leave it empty for now." short required={false} />
          <SubmitButton sending="Sending">They leave</SubmitButton>
        </CommandForm>
      </Fold>
      <Fold summary="Somebody comes late">
        <CommandForm {...form('person-late')}>
          <SelectEntry name="personId" label="Who?" ask="Choose" options={people} required />
          <FieldEntry name="from" type="time" label="There at" short required />
          <SubmitButton sending="Sending">They come then</SubmitButton>
        </CommandForm>
      </Fold>
      <Fold summary="Produce comes late">
        <CommandForm {...form('produce-late')}>
          <RadioEntry name="preparationId" label="For what?" options={products} required />
          <FieldEntry name="from" type="time" label="There at" short required />
          <SubmitButton sending="Sending">It comes then</SubmitButton>
        </CommandForm>
      </Fold>
      <Fold summary="There is less produce">
        <CommandForm {...form('produce-short')}>
          <RadioEntry name="preparationId" label="Of what?" options={products} required />
          <FieldEntry
            name="batches"
            type="number"
            inputMode="numeric"
            min={0}
            label="Enough for how many batches in all?"
            hint="With those that are done or on."
            short
            required
          />
          <SubmitButton sending="Sending">So many</SubmitButton>
        </CommandForm>
      </Fold>
    </Sheet>
  )
}

function OpenSetbacks({ groupId, dayId, path, standing, mayNote }: Place & { standing: DayStanding; mayNote: boolean }) {
  if (standing.setbacks.length === 0) return null
  return (
    <Sheet lid="sunk" lidWords="Noted" title="Noted today">
      {standing.setbacks.map(({ id, setback, note, isNew }) => (
        <div key={id}>
          <p>
            {saySetback(standing.stored.problem, setback)}
            {note && `, ${note}`}. <span className="quiet">{isNew ? 'Not in the plan yet.' : 'In the plan.'}</span>
          </p>
          {mayNote && (
            <CommandForm
              command="clear-setback"
              groupId={groupId}
              formKey={freshKey()}
              next={`${path}/now/changed`}
              fixed={{ dayId, setbackId: id }}
            >
              <SubmitButton kind="plain" small sending="Sending">
                It is over, or a slip
              </SubmitButton>
            </CommandForm>
          )}
        </div>
      ))}
    </Sheet>
  )
}
