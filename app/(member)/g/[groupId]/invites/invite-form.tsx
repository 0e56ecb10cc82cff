import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { listHouseholds } from '@/lib/queries/list-households'
import { type Actor, ROLES, roleName } from '@/shared/access/actor'
import { LONGEST_INVITE_DAYS } from '@/shared/forms/invite'

/** Makes an invitation. */
export async function InviteForm({ actor }: { actor: Actor }) {
  const { groupId } = actor
  const households = await listHouseholds(actor)
  return (
    <Sheet lid="flat" lidWords="If somebody is missing" title="Invite somebody">
      <CommandForm
        command="invite-person"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/invites?made={inviteId}`}
        className="form"
      >
        <SelectEntry name="role" label="Takes part as" options={ROLES.map((value) => ({ value, label: roleName(value) }))} first="member" />
        <SelectEntry
          name="householdId"
          label="In the household"
          ask="A new one, which they name"
          options={households.map(({ id, name }) => ({ value: id, label: name }))}
          required={false}
        />
        <FieldEntry
          name="email"
          label="Mail it to"
          hint="Left empty, you pass the address on yourself."
          type="email"
          inputMode="email"
          required={false}
          maxLength={254}
        />
        <FieldEntry
          name="days"
          label="Good for"
          type="number"
          inputMode="numeric"
          min={1}
          max={LONGEST_INVITE_DAYS}
          first={14}
          unit="days"
          required
          short
        />
        <SubmitButton sending="Making it">Make the invitation</SubmitButton>
      </CommandForm>
    </Sheet>
  )
}
