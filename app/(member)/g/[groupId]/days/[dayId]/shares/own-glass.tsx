import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { SharesPage } from '@/lib/queries/shares'

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

/** For those who hand over: which jars are whose glass, where nobody wrote it down at the filling. */
export function NameGlass({ groupId, dayId, page }: { groupId: string; dayId: string; page: SharesPage }) {
  const wishing = page.households.filter(({ wantsOwnGlass }) => wantsOwnGlass)
  const others = page.everybody.filter(({ id }) => !wishing.some((each) => each.id === id))
  return (
    <Fold summary="Whose glass is it?">
      {wishing.length > 0 && (
        <ul className="list">
          {wishing.map(({ id, name, ownGlass }) => (
            <li key={id}>
              {name} would like its own jars back: {ownGlass.length > 0 ? ownGlass.join(', ') : 'none are known yet'}.
            </li>
          ))}
        </ul>
      )}
      <CommandForm
        command="name-own-glass"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/days/${dayId}/shares`}
        fixed={{ dayId }}
        className="form"
      >
        <SelectEntry
          name="householdId"
          label="Whose"
          required
          ask="Choose one"
          options={[...wishing, ...others].map(({ id, name }) => ({ value: id, label: name }))}
        />
        <FieldEntry
          name="jars"
          label="Which jars"
          hint="Numbers as they stand on the lids: J1-02, J1-05. Share out again afterwards."
          required
        />
        <SubmitButton kind="plain" sending="Saving">
          Write it down
        </SubmitButton>
      </CommandForm>
    </Fold>
  )
}
