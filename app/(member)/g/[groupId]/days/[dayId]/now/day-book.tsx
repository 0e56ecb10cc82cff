import { CommandForm } from '@/app/_forms/command-form'
import { TextEntry } from '@/app/_forms/entries'
import { Checkbox } from '@/app/_ui/checkbox'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { TimeEntry } from '../_floor/time-entry'

interface DayBookProps {
  readonly groupId: string
  readonly dayId: string
  readonly path: string
  readonly mayRest: boolean
}

/** What is not a step of the work: an accident, and the end of the evening. */
export function DayBook({ groupId, dayId, path, mayRest }: DayBookProps) {
  const form = { groupId, fixed: { dayId } }
  return (
    <Sheet lid="sunk" lidWords="The day’s book" title="The day’s book">
      <details>
        <summary>Somebody was hurt, or nearly</summary>
        <CommandForm {...form} command="note-incident" formKey={freshKey()} next={`${path}/now`} className="form">
          <TextEntry name="what" label="What happened?" maxLength={300} />
          <TextEntry name="action" label="What was done?" maxLength={300} required={false} />
          <TimeEntry id="at-incident" />
          <SubmitButton sending="Sending">Write it down</SubmitButton>
        </CommandForm>
      </details>
      {mayRest && (
        <details>
          <summary>The evening is over</summary>
          <CommandForm {...form} command="rest-day" formKey={freshKey()} next={`${path}/seal-check`} className="form">
            <p>Every canner is empty. The jars rest 12 to 24 hours, then their seals are checked.</p>
            <Checkbox name="giveUpTheRest" label="Give up the batches that were not begun" />
            <TimeEntry id="at-rest" />
            <SubmitButton sending="Sending">Let the jars rest</SubmitButton>
          </CommandForm>
        </details>
      )}
    </Sheet>
  )
}
