import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { SharesPage } from '@/lib/queries/shares'

interface HandOverProps {
  readonly page: SharesPage
  readonly groupId: string
  readonly dayId: string
  readonly mayHandOver: boolean
  /** The reader's household: whoever does not hand over sees only its own jars. */
  readonly own: string
}

/** Which jars are whose, and one tap when they are taken home. */
export function HandOver({ page, groupId, dayId, mayHandOver, own }: HandOverProps) {
  const shown = page.households.filter(({ id }) => mayHandOver || id === own)
  if (shown.length === 0) return null
  const waiting = shown.some(({ inStore }) => inStore > 0)
  return (
    <Sheet lid={waiting ? 'domed' : 'sunk'} lidWords={waiting ? 'To be handed over' : 'Handed over'} title="Which jars are whose">
      <ul className="list">
        {shown.map(({ id, name, inStore }) => (
          <li key={id} className="row apart">
            <span>
              <b className="slab">{name}</b>
              <br />
              <OwnJars groupId={groupId} jars={page.products.flatMap(({ cells }) => cells[id]?.own ?? [])} />
            </span>
            {inStore > 0 && mayHandOver ? (
              <CommandForm
                command="hand-over"
                groupId={groupId}
                formKey={freshKey()}
                next={`/g/${groupId}/days/${dayId}/shares`}
                fixed={{ dayId, householdId: id }}
              >
                <SubmitButton small sending="Saving">
                  Hand {inStore} over
                </SubmitButton>
              </CommandForm>
            ) : (
              <span className="quiet">{inStore > 0 ? `${inStore} in the store` : 'has them'}</span>
            )}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

/** Short names, each leading to where its jar comes from. */
function OwnJars({ groupId, jars }: { groupId: string; jars: readonly { shortName: string; serial: string }[] }) {
  if (jars.length === 0) return 'no jars'
  return jars.map(({ shortName, serial }) => (
    <Link key={serial} className="jar-link" href={`/g/${groupId}/jars/${serial}`} prefetch={false}>
      {shortName}
    </Link>
  ))
}
