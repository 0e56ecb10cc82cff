import { CommandForm } from '@/app/_forms/command-form'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'

interface OwnGlassProps {
  readonly groupId: string
  readonly dayId: string
  readonly householdId: string
  readonly wants: boolean
}

/** A household's wish for the jars that it lent. */
export function OwnGlass({ groupId, dayId, householdId, wants }: OwnGlassProps) {
  return (
    <CommandForm
      command="wish-own-glass"
      groupId={groupId}
      formKey={freshKey()}
      next={`/g/${groupId}/days/${dayId}/shares`}
      fixed={{ dayId, householdId, wish: wants ? 'no' : 'yes' }}
      className="row apart"
    >
      <span>{wants ? 'You asked for the jars that you lent, as far as they are known.' : 'You take whatever jars come.'}</span>
      <SubmitButton small kind="plain" sending="Saving">
        {wants ? 'Any jars will do' : 'Ask for your own jars'}
      </SubmitButton>
    </CommandForm>
  )
}
