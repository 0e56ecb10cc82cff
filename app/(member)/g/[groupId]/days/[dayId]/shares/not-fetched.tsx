import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { SharesPage } from '@/lib/queries/shares'
import { sayShortDate } from '@/shared/time/calendar-date'

interface NotFetchedProps {
  readonly page: SharesPage
  readonly groupId: string
  readonly dayId: string
  readonly mayHandOver: boolean
  /** Whether jars may be given up now: by the organiser, once the last date is over. */
  readonly mayRelease: boolean
}

/** Where jars wait that were not taken home, until when, and whose they are. */
export function NotFetched({ page, groupId, dayId, mayHandOver, mayRelease }: NotFetchedProps) {
  const { pickUp } = page
  const waiting = page.households.filter(({ inStore }) => inStore > 0)
  if (waiting.length === 0 || (!mayHandOver && pickUp.until === null)) return null
  const next = `/g/${groupId}/days/${dayId}/shares`
  return (
    <Sheet lid={pickUp.until === null ? 'domed' : 'sunk'} lidWords={pickUp.until === null ? 'To be said' : 'Said'} title="To be fetched">
      <p>
        {pickUp.until === null
          ? 'Say where the jars stand and until when they wait.'
          : `${pickUp.place}, until ${sayShortDate(pickUp.until)}. Ask ${pickUp.contact}.`}
      </p>
      {mayHandOver && (
        <>
          <ul className="list">
            {waiting.map(({ id, name, inStore, contact }) => (
              <li key={id} className="row apart">
                <span>
                  <b>{name}</b>: {inStore} {inStore === 1 ? 'jar' : 'jars'}
                  <br />
                  <span className="quiet">{contact || 'no contact on file'}</span>
                </span>
                {mayRelease && (
                  <CommandForm command="release-jars" groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId, householdId: id }}>
                    <SubmitButton small kind="plain" sending="Saving">
                      Wait no longer<span className="unseen"> for {name}</span>
                    </SubmitButton>
                  </CommandForm>
                )}
              </li>
            ))}
          </ul>
          <Fold summary="Place, last date and contact">
            <CommandForm command="set-pick-up" groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId }} className="form side">
              <FieldEntry name="place" label="Where they stand" first={pickUp.place} maxLength={120} required />
              <FieldEntry name="until" label="Until" type="date" first={pickUp.until} required short />
              <FieldEntry name="contact" label="Whom one asks" first={pickUp.contact} maxLength={120} required />
              <div className="full">
                <SubmitButton kind="plain" sending="Saving">
                  Save it
                </SubmitButton>
              </div>
            </CommandForm>
          </Fold>
        </>
      )}
    </Sheet>
  )
}
