import { CommandForm } from '@/app/_forms/command-form'
import { SelectEntry } from '@/app/_forms/entries'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { FloorChoices } from '@/lib/queries/floor-now'
import type { LoadRow } from '@/lib/queries/floor-rows'
import { operatorSkill } from '@/shared/floor/check-loading'
import { TimeEntry } from '../../../_floor/time-entry'

interface TakeOverProps {
  readonly load: LoadRow
  readonly operators: FloorChoices['operators']
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

/** Somebody else who was trained for this canner minds it from now on. */
export function TakeOver({ load, operators, groupId, dayId, path }: TakeOverProps) {
  if (load.state === 'done' || load.state === 'failed') return null
  const others = operators.filter(({ id, skills }) => id !== load.operatorId && skills.includes(operatorSkill(load.method)))
  return (
    <details className="floor-part">
      <summary>Somebody else takes over</summary>
      {others.length === 0 ? (
        <p>Nobody else was trained for this canner. {load.operator ?? 'Whoever minds it'} stays with it until it is empty.</p>
      ) : (
        <CommandForm
          command="relieve-operator"
          groupId={groupId}
          formKey={freshKey()}
          next={`${path}/now/loads/${load.id}`}
          fixed={{ dayId, loadId: load.id }}
          className="form"
        >
          <SelectEntry
            name="operatorId"
            label="Who minds it now?"
            first={others[0]?.id}
            options={others.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <TimeEntry id="at-take-over" />
          {load.operator && <p>{load.operator} goes when the other stands at the canner.</p>}
          <SubmitButton sending="Sending">Take {load.canner} over</SubmitButton>
        </CommandForm>
      )}
    </details>
  )
}
