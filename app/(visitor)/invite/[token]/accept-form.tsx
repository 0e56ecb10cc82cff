import { ActionForm } from '@/app/_forms/action-form'
import { FieldEntry } from '@/app/_forms/entries'
import { SubmitButton } from '@/app/_ui/submit-button'
import { acceptInviteAction } from './actions'

interface AcceptFormProps {
  readonly token: string
  readonly formKey: string
  readonly name: string
  readonly asksHousehold: boolean
}

/** Joins the group, with a new household when the invitation names none. */
export function AcceptForm({ token, formKey, name, asksHousehold }: AcceptFormProps) {
  return (
    <ActionForm action={acceptInviteAction} schema="accept-invite" formKey={formKey} hidden={{ token }} className="form">
      <FieldEntry name="name" label="What neighbours call you" first={name} required maxLength={80} />
      {asksHousehold && (
        <>
          <FieldEntry name="householdName" label="Name of your household" hint="Jars and costs go by household." required maxLength={60} />
          <FieldEntry
            name="headcount"
            label="People in it"
            type="number"
            inputMode="numeric"
            min={1}
            max={50}
            first={1}
            unit="people"
            required
            short
          />
        </>
      )}
      <SubmitButton sending="Joining">Join</SubmitButton>
    </ActionForm>
  )
}
