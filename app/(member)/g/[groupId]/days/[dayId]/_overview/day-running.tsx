import { CommandForm } from '@/app/_forms/command-form'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayHead } from '@/lib/queries/day-head'
import type { KitchenChoice } from '@/lib/queries/kitchen-choices'
import { dayLife } from '@/shared/lifecycle/day-states'
import { DayFields } from '../../day-fields'

type Props = { groupId: string; day: DayHead; kitchens: readonly KitchenChoice[] }

/** What the organiser may change about the day itself; calling it off comes last and lowest. */
export function DayRunning({ groupId, day, kitchens }: Props) {
  const path = `/g/${groupId}/days/${day.id}`
  const mayEdit = day.state === 'draft' || day.state === 'claiming' || day.state === 'planned'
  if (!mayEdit) return null
  const form = { groupId, next: path }
  return (
    <Sheet lid="sunk" title="Date, hours and rules" id="hours">
      <Fold summary="Change them">
        <CommandForm {...form} command="edit-day" formKey={freshKey()} fixed={{ dayId: day.id, version: day.version }} className="form">
          <DayFields kitchens={kitchens} first={day} />
          <SubmitButton sending="Saving">Save the day</SubmitButton>
        </CommandForm>
      </Fold>
      {day.state === 'claiming' && (
        <CommandForm {...form} command="close-claims" formKey={freshKey()} fixed={{ dayId: day.id }}>
          <SubmitButton kind="plain" sending="Sending">
            Close the claims now
          </SubmitButton>
        </CommandForm>
      )}
      {dayLife.mayMove(day.state, 'cancelled') && (
        <Fold summary="Call the day off">
          <CommandForm {...form} command="cancel-day" formKey={freshKey()} fixed={{ dayId: day.id }}>
            <SubmitButton kind="grave" sending="Sending" consequence="Claims and promises end. It cannot be taken back.">
              Call the day off
            </SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}
