import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Checkbox } from '@/app/_ui/checkbox'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { FloorChoices } from '@/lib/queries/floor-now'
import type { BatchRow } from '@/lib/queries/floor-rows'
import { mostJars } from '@/shared/floor/most-jars'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { StepperEntry } from '../../../_floor/stepper-entry'
import { TimeEntry } from '../../../_floor/time-entry'

interface FillFormProps {
  readonly batch: BatchRow
  readonly choices: FloorChoices
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

/** How many jars the batch gave, counted with big steps. */
export function FillForm({ batch, choices, groupId, dayId, path }: FillFormProps) {
  const high = mostJars(yieldInJars(batch.recipe, batch.jarSize), batch.plannedJars)
  const glass = choices.glass.filter(({ jarSize }) => jarSize === batch.jarSize)
  return (
    <CommandForm
      command="fill-batch"
      groupId={groupId}
      formKey={freshKey()}
      next={`${path}/now/batches/${batch.id}`}
      fixed={{ dayId, batchId: batch.id }}
      className="form"
    >
      <StepperEntry
        name="jars"
        label="How many jars are full?"
        first={Math.min(batch.plannedJars, high)}
        min={1}
        max={200}
        one="jar"
        unit={jarName(batch.jarSize, 2)}
        hint={`The recipe gives at most ${high} of this batch.`}
      />
      <SelectEntry
        name="lidLotId"
        label="Lids from which lot?"
        first={choices.lidLotId ?? choices.lids[0]?.id}
        options={choices.lids.map(({ id, lotCode }) => ({ value: id, label: lotCode }))}
      />
      {glass.length > 0 && (
        <SelectEntry
          name="jarLotId"
          label="Whose jars?"
          ask="no lot of their own"
          required={false}
          options={glass.map(({ id, lotCode }) => ({ value: id, label: lotCode }))}
        />
      )}
      <details className="at-another-time">
        <summary>More than {high}, or a note</summary>
        <Checkbox name="countedAgain" label="Counted again, and nothing was added" />
        <FieldEntry name="note" label="Note" maxLength={200} required={false} />
      </details>
      <TimeEntry id="at-fill" />
      <SubmitButton sending="Sending" consequence={batch.isCold ? 'They go into the fridge or freezer now: no canner.' : undefined}>
        All jars of {batch.code} are full
      </SubmitButton>
    </CommandForm>
  )
}
