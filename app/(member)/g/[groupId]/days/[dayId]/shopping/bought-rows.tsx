'use client'

import { CommandForm } from '@/app/_forms/command-form'
import { Button } from '@/app/_ui/button'
import { SubmitButton } from '@/app/_ui/submit-button'
import { type TickState, ticksOfItem } from '@/shared/supplies/kept-ticks'
import { useKeeper } from './keep-ticks'

/** A receipt of the line, as the page knows it. */
export interface BoughtLine {
  readonly id: string
  readonly said: string
  readonly formKey: string
  readonly mayTakeBack: boolean
}

interface BoughtRowsProps {
  readonly groupId: string
  readonly dayId: string
  readonly item: string
  readonly next: string
  readonly rows: readonly BoughtLine[]
}

/** What was bought of a line: what the server has, and what this phone still keeps. */
export function BoughtRows({ groupId, dayId, item, next, rows }: BoughtRowsProps) {
  const { ticks, back, drop } = useKeeper()
  const { kept, takenBack } = ticksOfItem(
    ticks,
    item,
    rows.map(({ id }) => ({ id, item })),
  )
  const putBack = (purchaseId: string, key: string) =>
    back({ key, type: 'put-back', purchaseId, item, said: '', body: { purchaseId }, state: { kind: 'kept' } })
  if (rows.length + kept.length === 0) return null
  return (
    <ul className="list bought">
      {rows.map(({ id, said, formKey, mayTakeBack }) => (
        <li key={id} className="row apart">
          <span>
            <b>Bought:</b> {said}
          </span>
          {takenBack.has(id) && <span className="quiet">{sayBack(takenBack.get(id)?.state)}</span>}
          {mayTakeBack && !takenBack.has(id) && (
            <CommandForm
              command="put-back"
              groupId={groupId}
              formKey={formKey}
              next={next}
              fixed={{ dayId, purchaseId: id }}
              keep={async () => {
                await putBack(id, formKey)
                return null
              }}
            >
              <SubmitButton small kind="plain" sending="Taking back">
                Take back<span className="unseen"> {item}</span>
              </SubmitButton>
            </CommandForm>
          )}
        </li>
      ))}
      {kept.map(({ key, purchaseId, said, state }) => (
        <li key={key} className="row apart">
          <span role="status">
            <b>{state.kind === 'refused' ? 'Not accepted:' : 'Bought:'}</b> {said}
            <br />
            <span className="quiet">{state.kind === 'refused' ? state.why : state.kind === 'sent' ? 'saved' : 'kept on this phone'}</span>
          </span>
          <Button
            small
            kind="plain"
            type="button"
            onClick={() => void (state.kind === 'refused' ? drop(key) : putBack(purchaseId, crypto.randomUUID()))}
          >
            Take back<span className="unseen"> {item}</span>
          </Button>
        </li>
      ))}
    </ul>
  )
}

function sayBack(state: TickState | undefined): string {
  if (state?.kind === 'refused') return `Not taken back. ${state.why}`
  return state?.kind === 'sent' ? 'taken back' : 'taken back, kept on this phone'
}
