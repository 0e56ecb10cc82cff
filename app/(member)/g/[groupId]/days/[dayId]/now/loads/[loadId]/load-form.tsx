import { CommandForm } from '@/app/_forms/command-form'
import { CheckboxListEntry, FieldEntry, RadioEntry } from '@/app/_forms/entries'
import { Notice } from '@/app/_ui/notice'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { FloorChoices } from '@/lib/queries/floor-now'
import type { BatchRow } from '@/lib/queries/floor-rows'
import { productName } from '@/shared/day/product-name'
import { sayJars } from '@/shared/wording/say-load'
import { TimeEntry } from '../../../_floor/time-entry'

interface LoadFormProps {
  /** Left out for a load that was not planned. */
  readonly loadId?: string
  readonly cannerId?: string
  readonly operatorId?: string | null
  readonly waiting: readonly BatchRow[]
  /** Batches ticked at first. */
  readonly ticked: readonly string[]
  readonly choices: FloorChoices
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

/** Which jars go into which canner, and who minds it. The process is looked up when it is sent. */
export function LoadForm({ loadId, cannerId, operatorId, waiting, ticked, choices, groupId, dayId, path }: LoadFormProps) {
  if (waiting.length === 0) return <Notice what="No filled jars wait." instead="Fill a batch first." />
  return (
    <CommandForm
      command="load-canner"
      groupId={groupId}
      formKey={freshKey()}
      next={`${path}/now`}
      fixed={loadId ? { dayId, loadId } : { dayId }}
      className="form"
    >
      <CheckboxListEntry
        name="batchIds"
        legend="Which jars go in?"
        first={ticked}
        options={waiting.map((batch) => ({
          value: batch.id,
          label: `${batch.code}: ${sayJars(batch.waiting, batch.jarSize)}, ${productName(batch.recipe.title)}`,
        }))}
      />
      <RadioEntry
        name="cannerId"
        label="Into which canner?"
        across
        first={cannerId}
        options={choices.canners.map(({ id, label, outOfUse }) => ({
          value: id,
          label,
          disabled: outOfUse !== null,
          hint: outOfUse ? `Out of use: ${outOfUse}` : undefined,
        }))}
      />
      <RadioEntry
        name="operatorId"
        label="Who minds it?"
        across
        first={operatorId ?? choices.operators[0]?.id}
        options={choices.operators.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <details className="at-another-time">
        <summary>Not all of them, or a note</summary>
        <FieldEntry name="jars" type="number" inputMode="numeric" min={1} max={200} label="How many jars?" short required={false} />
        <FieldEntry name="note" label="Note" maxLength={200} required={false} />
      </details>
      <TimeEntry id="at-load" />
      <SubmitButton sending="Sending">Jars are in, lid on</SubmitButton>
    </CommandForm>
  )
}
