import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, RadioEntry, SelectEntry } from '@/app/_forms/entries'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { FloorLoadPage } from '@/lib/queries/floor-batch'
import { AFTER_A_FAILED_PROCESS } from '@/shared/floor/unsealed-jars'
import { TimeEntry } from '../../../_floor/time-entry'

interface GoneWrongProps {
  readonly page: FloorLoadPage
  readonly groupId: string
  readonly dayId: string
  readonly path: string
  readonly mayNote: boolean
  readonly mayFail: boolean
}

/** A jar that broke, or a whole load that is given up. */
export function GoneWrong({ page: { load, jars }, groupId, dayId, path, mayNote, mayFail }: GoneWrongProps) {
  const whole = jars.filter(({ state }) => state !== 'broken' && state !== 'discarded')
  const form = { groupId, next: `${path}/now/loads/${load.id}`, className: 'form' }
  const isOpen = !['planned', 'done', 'failed'].includes(load.state)
  return (
    <div className="floor-part">
      {mayNote && whole.length > 0 && (
        <details>
          <summary>A jar broke</summary>
          <CommandForm {...form} command="note-broken-jar" formKey={freshKey()} fixed={{ dayId }}>
            <SelectEntry
              name="jarId"
              label="Which jar?"
              hint="If nobody knows, take any of them."
              options={whole.map(({ id, shortName }) => ({ value: id, label: shortName }))}
            />
            <RadioEntry
              name="how"
              label="Where does the crack begin?"
              hint="It tells which step to mend."
              first="unknown"
              options={[
                { value: 'base', label: 'A ring at the base: heat met cold' },
                { value: 'side', label: 'A fork up the side: pressure inside' },
                { value: 'star', label: 'A star: it was knocked' },
                { value: 'unknown', label: 'Not known' },
              ]}
            />
            <FieldEntry name="where" label="Where did it break?" first={`in ${load.canner}`} maxLength={80} />
            <TimeEntry id="at-broken" />
            <SubmitButton sending="Sending">Note the broken jar</SubmitButton>
          </CommandForm>
        </details>
      )}
      {mayFail && isOpen && (
        <details>
          <summary>Give this load up</summary>
          <CommandForm {...form} command="fail-load" formKey={freshKey()} fixed={{ dayId, loadId: load.id }}>
            <p>{AFTER_A_FAILED_PROCESS.words}</p>
            <p className="src">{AFTER_A_FAILED_PROCESS.source}</p>
            <RadioEntry
              name="way"
              label="What becomes of the jars?"
              options={[
                { value: 'again', label: 'A whole new load, at once' },
                { value: 'fridge', label: 'Into the fridge, to be eaten first' },
                { value: 'discard', label: 'Thrown out' },
              ]}
            />
            <FieldEntry name="why" label="What went wrong?" maxLength={200} />
            <TimeEntry id="at-fail" />
            <SubmitButton kind="grave" sending="Sending" consequence="Its jars never had their process. It cannot be taken back.">
              Give {load.code} up
            </SubmitButton>
          </CommandForm>
        </details>
      )}
    </div>
  )
}
