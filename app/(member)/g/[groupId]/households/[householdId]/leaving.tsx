import { CommandForm } from '@/app/_forms/command-form'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'

type Props = { groupId: string; household: { id: string; name: string; leftAt: Date | null } }

/** For the organiser: a household leaves the group. What it took home stays known, for a recall. */
export function Leaving({ groupId, household: { id, name, leftAt } }: Props) {
  if (leftAt)
    return (
      <Sheet lid="sunk" title="No longer in the group">
        <p>It stays named with the jars it took home, so that it hears of a recall.</p>
      </Sheet>
    )
  return (
    <Sheet lid="flat" lidWords="Only when it is wanted" title="Leaving the group">
      <Fold summary={`${name} leaves`}>
        <p>
          Its people cannot open the group any more, and it goes off every waiting list. It stays named with the jars it took home. Jars
          that it still asks for, or that are its share and not fetched, keep it here until they are settled.
        </p>
        <CommandForm
          command="remove-household"
          groupId={groupId}
          formKey={freshKey()}
          next={`/g/${groupId}/households/${id}`}
          fixed={{ householdId: id }}
        >
          <SubmitButton kind="grave" sending="Sending">
            Let {name} leave
          </SubmitButton>
        </CommandForm>
      </Fold>
    </Sheet>
  )
}
