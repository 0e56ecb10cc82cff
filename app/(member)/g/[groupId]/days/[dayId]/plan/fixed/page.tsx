import type { Metadata } from 'next'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry, SelectEntry } from '@/app/_forms/entries'
import { EmptyState } from '@/app/_ui/empty-state'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { type DayHead, requireDayHead } from '@/lib/queries/day-head'
import { readLocks, type StoredLock } from '@/lib/queries/replan-input'
import { readSavedPlan, type StoredPlan } from '@/lib/queries/saved-plan'
import { readWorkBegun } from '@/lib/queries/work-begun'
import { begunUnder, lockedBatchId, type WorkBegun } from '@/shared/planning/locks'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayLock } from '@/shared/wording/say-replan'
import { DayPlace } from '../../_overview/day-place'

export const metadata: Metadata = { title: 'Fixed by hand' }

/** Tasks that the planner may not move: fix one where it stands, or at another minute, canner or person; and let it go again. */
export default async function FixedPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'plan-day')
  const day = await requireDayHead(groupId, dayId)
  const [stored, allLocks, begun] = await Promise.all([
    readSavedPlan(groupId, dayId),
    readLocks(groupId, dayId),
    readWorkBegun(groupId, dayId),
  ])
  const locks = stored ? allLocks.filter((lock) => begunUnder(stored.plan, begun, lock) === null) : []
  const path = `/g/${groupId}/days/${dayId}`
  const isOpen = day.state === 'planned' || day.state === 'running'
  return (
    <Page>
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title="Fixed by hand"
        lead="The planner goes round what is fixed, or says which of it stands in the way."
      />
      {!stored || !isOpen ? (
        <Sheet lid="flat" title="Nothing to fix">
          <EmptyState text="Tasks can be fixed once the day is planned, and until its work is over." />
        </Sheet>
      ) : (
        <>
          <Locks {...{ groupId, dayId, path, locks, stored }} />
          {locks.length > 0 && (
            <LinkButton href={day.state === 'running' ? `${path}/plan/again` : `${path}/plan`}>{planWords(day)}</LinkButton>
          )}
          <LoadsToFix {...{ groupId, dayId, path, locks, stored, begun }} />
        </>
      )}
    </Page>
  )
}

const planWords = ({ state }: DayHead) => (state === 'running' ? 'Plan again from now' : 'To the timetable: plan it again')

interface Props {
  readonly groupId: string
  readonly dayId: string
  readonly path: string
  readonly locks: readonly StoredLock[]
  readonly stored: StoredPlan
}

function Locks({ groupId, dayId, path, locks, stored: { problem, plan } }: Props) {
  return (
    <Sheet lid={locks.length > 0 ? 'sunk' : 'flat'} lidWords={locks.length > 0 ? 'Fixed' : 'Nothing fixed'} title="Fixed now">
      {locks.length === 0 && <EmptyState text="Nothing is fixed: the planner may move everything that has not begun." />}
      {locks.map((lock) => (
        <div key={lock.id}>
          <p>{sayLock(problem, plan, lock)}.</p>
          <CommandForm
            command="unlock-task"
            groupId={groupId}
            formKey={freshKey()}
            next={`${path}/plan/fixed`}
            fixed={{ dayId, lockId: lock.id }}
          >
            <SubmitButton kind="plain" small sending="Sending">
              Unlock
            </SubmitButton>
          </CommandForm>
        </div>
      ))}
    </Sheet>
  )
}

const TASKS = [
  { value: 'load', label: 'The load, from loading to empty' },
  { value: 'cook', label: 'Cooking' },
  { value: 'fill', label: 'Filling' },
  { value: 'prep', label: 'Preparing' },
  { value: 'wash', label: 'Jar washing' },
] as const

/** Every load that is still to come: fixed where it stands with one tap, or otherwise with a form. */
function LoadsToFix({ groupId, dayId, path, locks, stored: { problem, plan }, begun }: Props & { begun: WorkBegun }) {
  const toCome = plan.loads.filter(({ code }) => !begun.loads.has(code))
  const isFixed = (id: string) => locks.some((lock) => lock.task === 'load' && lockedBatchId(lock) === id)
  return (
    <Sheet lid="flat" lidWords="The loads" title="The loads">
      {toCome.length === 0 && <EmptyState text="Every load has begun: nothing is left to fix." />}
      {toCome.map((load) => {
        const batchId = load.batchParts[0]?.batchId ?? ''
        const cut = batchId.lastIndexOf('/')
        const batch = { preparationId: batchId.slice(0, cut), batch: Number(batchId.slice(cut + 1)) }
        const canner = problem.canners.find(({ id }) => id === load.cannerId)?.label ?? ''
        const codes = plan.batches.filter(({ id }) => load.batchParts.some((part) => part.batchId === id)).map(({ code }) => code)
        const first = plan.batches.find(({ id }) => id === batchId)?.code ?? ''
        const tasks = TASKS.filter(({ value }) => value === 'load' || !begun.batches.has(first))
        const form = { command: 'lock-task', groupId, next: `${path}/plan/fixed`, className: 'form' }
        return (
          <Fold
            key={load.id}
            summary={`${formatClock(load.loadAt)} ${load.code}, ${codes.join(' and ')}, ${canner}${isFixed(batchId) ? ', fixed' : ''}`}
          >
            <CommandForm
              {...form}
              formKey={freshKey()}
              fixed={{ dayId, ...batch, task: 'load', at: formatClock(load.loadAt), equipmentId: load.cannerId, personId: load.operatorId }}
            >
              <SubmitButton kind="plain" sending="Sending">
                Fix the load as it stands
              </SubmitButton>
            </CommandForm>
            <Fold summary="Fix something else of it">
              <CommandForm {...form} formKey={freshKey()} fixed={{ dayId, ...batch }}>
                <RadioEntry name="task" label="What?" options={tasks} first="load" required />
                <FieldEntry
                  name="at"
                  type="time"
                  label="Starts at"
                  hint="Leave it empty when any minute is right."
                  short
                  required={false}
                />
                <SelectEntry
                  name="equipmentId"
                  label="At"
                  ask="Any"
                  options={[...problem.canners, ...problem.kettles].map(({ id, label }) => ({ value: id, label }))}
                  required={false}
                />
                <SelectEntry
                  name="personId"
                  label="With"
                  ask="Anybody who may"
                  options={problem.people.map(({ id, name }) => ({ value: id, label: name }))}
                  required={false}
                />
                <SubmitButton sending="Sending">Fix it</SubmitButton>
              </CommandForm>
            </Fold>
          </Fold>
        )
      })}
    </Sheet>
  )
}
