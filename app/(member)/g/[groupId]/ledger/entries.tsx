import { CommandForm } from '@/app/_forms/command-form'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { LedgerEntry } from '@/lib/queries/jar-ledger'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayShortDate } from '@/shared/time/calendar-date'
import { MOVEMENT_WORDS } from '@/shared/wording/say-ledger'

/** The entries behind the sums, the newest first. Nothing is struck out: a correction is an entry of its own. */
export function Entries({ entries, groupId, edits }: { entries: readonly LedgerEntry[]; groupId: string; edits: boolean }) {
  return (
    <Sheet lid="sunk" lidWords="Written down" title="Entries">
      <ul className="list">
        {entries.map((entry) => (
          <li key={entry.id} className="row apart">
            <span>
              <b>{entry.household}</b>: {entry.jars} {jarName(entry.size, entry.jars)}, {entry.mouth}.{' '}
              {entry.corrects ? 'An entry taken back' : MOVEMENT_WORDS[entry.kind].ask}.
              <br />
              <span className="quiet">
                {sayShortDate(entry.movedOn)}, {entry.by}
                {entry.day && `, ${entry.day}`}
                {entry.note && `. ${entry.note}`}
                {entry.isTakenBack && '. Taken back'}
              </span>
            </span>
            {edits && entry.corrects === null && !entry.isTakenBack && (
              <CommandForm
                command="take-back-jars"
                groupId={groupId}
                formKey={freshKey()}
                next={`/g/${groupId}/ledger`}
                fixed={{ movementId: entry.id }}
              >
                <SubmitButton small kind="plain" sending="Taking back">
                  Take back
                  <span className="unseen">
                    {' '}
                    {entry.household}, {entry.jars} jars
                  </span>
                </SubmitButton>
              </CommandForm>
            )}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
