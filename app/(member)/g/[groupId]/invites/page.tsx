import type { Metadata } from 'next'
import { CommandForm } from '@/app/_forms/command-form'
import { EmptyState } from '@/app/_ui/empty-state'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { groupHead } from '@/lib/queries/group-head'
import { freshInviteAddress, type ListedInvite, listInvites } from '@/lib/queries/list-invites'
import { roleName } from '@/shared/access/actor'
import { dateIn, sayDate, sayShortDate } from '@/shared/time/calendar-date'
import { InviteForm } from './invite-form'

export const metadata: Metadata = { title: 'Invitations', referrer: 'same-origin' }

interface InvitesPageProps {
  readonly params: Promise<{ groupId: string }>
  readonly searchParams: Promise<Record<string, unknown>>
}

/** Invitations: a new one, its address once, and what became of the others. */
export default async function InvitesPage({ params, searchParams }: InvitesPageProps) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'invite')
  const { made } = await searchParams
  const now = new Date()
  const [{ timeZone }, invites] = await Promise.all([groupHead(groupId), listInvites(actor, now)])
  const address = typeof made === 'string' ? await freshInviteAddress(actor, made, now) : null
  const madeNow = invites.find(({ id }) => id === made)
  const open = invites.filter(({ problem }) => problem === null)
  const over = invites.filter(({ problem }) => problem !== null)
  const lastDay = (invite: ListedInvite) => dateIn(timeZone, invite.expiresAt)
  return (
    <Page>
      <PageHead
        title={open.length === 0 ? 'Nobody is invited' : `${open.length} open ${open.length === 1 ? 'invitation' : 'invitations'}`}
      />
      <div className="two">
        <div className="stack">
          {address && madeNow && <Address address={address} mailedTo={madeNow.email} until={sayDate(lastDay(madeNow))} />}
          <InviteForm actor={actor} />
        </div>
        <div className="stack">
          <Sheet lid={open.length > 0 ? 'domed' : 'sunk'} lidWords="Waiting for an answer" title="Open">
            {open.length === 0 && <EmptyState text="No invitation is open. Make one, and pass its address on." />}
            <ul className="things">
              {open.map((invite) => (
                <li key={invite.id}>
                  <Line invite={invite} words={`Until ${sayShortDate(lastDay(invite))}`} />
                  <CommandForm
                    command="revoke-invite"
                    groupId={groupId}
                    formKey={freshKey()}
                    next={`/g/${groupId}/invites`}
                    fixed={{ inviteId: invite.id }}
                  >
                    <SubmitButton kind="plain" small sending="Taking it back">
                      Take it back
                    </SubmitButton>
                  </CommandForm>
                </li>
              ))}
            </ul>
          </Sheet>
          {over.length > 0 && (
            <Sheet lid="sunk" title="Over">
              <ul className="things">
                {over.map((invite) => (
                  <li key={invite.id}>
                    <Line invite={invite} words={OVER_WORDS[invite.problem ?? 'expired']} />
                  </li>
                ))}
              </ul>
            </Sheet>
          )}
        </div>
      </div>
    </Page>
  )
}

const OVER_WORDS = { used: 'Taken up', revoked: 'Taken back', expired: 'Expired' } as const

function Line({ invite: { role, household, email }, words }: { invite: ListedInvite; words: string }) {
  return (
    <>
      <p>
        <b>{roleName(role)}</b>, {household ? `household ${household}` : 'with a new household'}
      </p>
      <p className="quiet">
        {words}
        {email && `, mailed to ${email}`}
      </p>
    </>
  )
}

function Address({ address, mailedTo, until }: { address: string; mailedTo: string | null; until: string }) {
  return (
    <Sheet lid="domed" title="Pass this address on" changed>
      <p className="address">{address}</p>
      <p>{mailedTo ? `It is also on its way to ${mailedTo}.` : 'Copy it now: it is shown for ten minutes and then to nobody.'}</p>
      <p className="quiet">Good until {until}. Whoever opens it first can take it up, once.</p>
    </Sheet>
  )
}
