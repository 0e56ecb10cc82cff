import { CommandForm } from '@/app/_forms/command-form'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { BatchRow } from '@/lib/queries/floor-rows'
import { TimeEntry } from '../../../_floor/time-entry'

interface FillingBeginsProps {
  readonly batch: BatchRow
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

/** The first jar: one tap, so that a new plan knows and does not guess. Whoever forgets it counts the full jars all the same. */
export function FillingBegins({ batch, groupId, dayId, path }: FillingBeginsProps) {
  return (
    <CommandForm
      command="start-filling"
      groupId={groupId}
      formKey={freshKey()}
      next={`${path}/now/batches/${batch.id}`}
      fixed={{ dayId, batchId: batch.id }}
      className="form"
    >
      <SubmitButton kind="plain" sending="Sending">
        First jar of {batch.code}
      </SubmitButton>
      <TimeEntry id="at-first-jar" />
    </CommandForm>
  )
}
