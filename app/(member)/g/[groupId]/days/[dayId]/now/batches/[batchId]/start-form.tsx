import { CommandForm } from '@/app/_forms/command-form'
import { CheckboxListEntry, RadioEntry } from '@/app/_forms/entries'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { FloorChoices } from '@/lib/queries/floor-now'
import type { BatchRow } from '@/lib/queries/floor-rows'
import { lotsOfRecipe } from '@/shared/floor/lots-of-recipe'
import { TimeEntry } from '../../../_floor/time-entry'

interface StartFormProps {
  readonly batch: BatchRow
  readonly choices: FloorChoices
  readonly groupId: string
  readonly dayId: string
  readonly path: string
}

/** Puts the batch on: which kettle, and which lots go in. */
export function StartForm({ batch, choices, groupId, dayId, path }: StartFormProps) {
  if (choices.lots.length === 0) {
    return (
      <>
        <Notice
          what="No ingredients were received yet."
          why="Every jar is traced to what went into it."
          instead="Write down first what came in, from whom and when."
        />
        <LinkButton href={`${path}/ingredients`}>What came in</LinkButton>
      </>
    )
  }
  const ticked = lotsOfRecipe(choices.lots, batch.recipe.ingredients)
  return (
    <CommandForm
      command="start-batch"
      groupId={groupId}
      formKey={freshKey()}
      next={`${path}/now`}
      fixed={{ dayId, batchId: batch.id }}
      className="form"
    >
      <RadioEntry
        name="kettleId"
        label="In which kettle?"
        across
        first={batch.kettleId ?? undefined}
        options={choices.kettles.map(({ id, label }) => ({ value: id, label }))}
      />
      <CheckboxListEntry
        name="lotIds"
        legend="What goes in?"
        first={ticked}
        options={choices.lots.map(({ id, code, item, from }) => ({ value: id, label: `${code}: ${item}, from ${from}` }))}
      />
      <TimeEntry id="at-start" />
      <SubmitButton sending="Sending">Start {batch.code}</SubmitButton>
    </CommandForm>
  )
}
