import { CommandForm } from '@/app/_forms/command-form'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'

/** Back to the plan before, as a new plan; said to be untrue where work has begun otherwise since. */
export function UndoForm({ groupId, dayId, number, path }: { groupId: string; dayId: string; number: number; path: string }) {
  if (number <= 1) return null
  return (
    <CommandForm command="undo-plan" groupId={groupId} formKey={freshKey()} next={`${path}/plan`} fixed={{ dayId, basedOn: number }}>
      <SubmitButton kind="plain" small sending="Going back">
        Back to the plan before
      </SubmitButton>
    </CommandForm>
  )
}
