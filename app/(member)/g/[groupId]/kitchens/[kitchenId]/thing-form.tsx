import type { ReactNode } from 'react'
import { CommandForm } from '@/app/_forms/command-form'
import { Fold } from '@/app/_ui/fold'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { Place } from './place'

interface ThingFormProps {
  readonly place: Place
  readonly command: string
  readonly summary: string
  readonly button: string
  readonly fixed: Readonly<Record<string, string>>
  readonly open?: boolean
  readonly children: ReactNode
}

/** A folded form for something that stands in the kitchen; nothing for those who may not change it. */
export function ThingForm({ place: { groupId, kitchenId, edits }, command, summary, button, fixed, open, children }: ThingFormProps) {
  if (!edits) return null
  return (
    <Fold summary={summary} open={open}>
      <CommandForm
        command={command}
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/kitchens/${kitchenId}`}
        fixed={fixed}
        className="form"
      >
        {children}
        <SubmitButton kind="plain" sending="Saving">
          {button}
        </SubmitButton>
      </CommandForm>
    </Fold>
  )
}
