import type { Metadata } from 'next'
import { headers } from 'next/headers'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { clientAddress } from '@/lib/http/client-address'
import { freshKey } from '@/lib/http/fresh-key'
import { inviteByToken } from '@/lib/queries/invite-by-token'
import { noteRefusal } from '@/lib/request-state'
import { countInWindow } from '@/lib/services/count-in-window'
import { roleName } from '@/shared/access/actor'
import { tooManyTries } from '@/shared/wording/account'
import { inviteIsOver } from '@/shared/wording/invite'
import type { Refusal } from '@/shared/wording/refusal'
import { AcceptForm } from './accept-form'

export const metadata: Metadata = { title: 'Invitation', referrer: 'same-origin', robots: { index: false } }

const MOST_A_MINUTE = 60

/** What somebody is asked to join, and the form that joins. */
export default async function InvitePage({ params }: { params: Promise<{ token: string }> }) {
  const from = clientAddress((await headers()).get('x-forwarded-for'))
  if ((await countInWindow(`invite-from:${from}`, MOST_A_MINUTE, 60)) > 0) return <Refused refusal={tooManyTries()} />
  const { token } = await params
  const invite = await inviteByToken(token, new Date())
  if (!invite) notFound()
  const user = await currentUser()
  if (user && (await currentActor(invite.groupId))) return <AlreadyHere group={invite.group} groupId={invite.groupId} />
  if (invite.problem) return <Refused refusal={inviteIsOver(invite.problem)} />
  const role = roleName(invite.role)
  return (
    <Page size="phone">
      <PageHead
        kicker="Invitation"
        title={`Join ${invite.group}`}
        lead={`As: ${role}${invite.household ? `, in the household ${invite.household}` : ''}.`}
      />
      {user ? (
        <Sheet lid="domed" title="You">
          <AcceptForm token={token} formKey={freshKey()} name={user.name} asksHousehold={invite.household === null} />
        </Sheet>
      ) : (
        <SignInFirst path={`/invite/${token}`} />
      )}
    </Page>
  )
}

function SignInFirst({ path }: { path: string }) {
  const query = `?callbackUrl=${encodeURIComponent(path)}`
  return (
    <Sheet lid="domed" title="First, who are you?">
      <p>You join with your own account. You come back here after it.</p>
      <div className="dos">
        <LinkButton href={`/sign-up${query}`}>Make an account</LinkButton>
        <LinkButton kind="plain" href={`/sign-in${query}`}>
          I have one: sign in
        </LinkButton>
      </div>
    </Sheet>
  )
}

function AlreadyHere({ group, groupId }: { group: string; groupId: string }) {
  return (
    <Page size="phone">
      <PageHead kicker="Invitation" title={`You are in ${group} already`} />
      <Sheet lid="sunk">
        <p>There is nothing to take up. If the invitation was meant for somebody else, pass it on before it expires.</p>
        <LinkButton href={`/g/${groupId}`}>Go to {group}</LinkButton>
      </Sheet>
    </Page>
  )
}

function Refused({ refusal }: { refusal: Refusal }) {
  noteRefusal(refusal.status)
  return (
    <Page size="phone">
      <PageHead kicker="Invitation" title="Not to be taken up" />
      <Sheet lid="domed">
        <Notice what={refusal.what} why={refusal.why} instead={refusal.instead} />
      </Sheet>
    </Page>
  )
}
