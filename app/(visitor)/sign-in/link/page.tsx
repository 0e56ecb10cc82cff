import type { Metadata } from 'next'
import { ActionForm } from '@/app/_forms/action-form'
import { LinkButton } from '@/app/_ui/link-button'
import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { nextPath } from '@/lib/http/next-path'
import { noteRefusal } from '@/lib/request-state'
import { MailedLink } from '@/shared/forms/sign-in'
import { linkIsOver } from '@/shared/wording/account'
import { signInByLink } from '../actions'

// Under "no-referrer" a posted form says that it comes from nowhere, and without script it would be refused.
export const metadata: Metadata = { title: 'Sign in by mail', referrer: 'same-origin', robots: { index: false } }

/** Where a mailed link leads. It signs in at a tap and not by being opened: mail is looked through by programs that open every link. */
export default async function LinkPage({ searchParams }: { searchParams: Promise<Record<string, unknown>> }) {
  const { email, token, callbackUrl } = await searchParams
  const link = MailedLink.safeParse({ email, token })
  if (!link.success) return <NoLink />
  return (
    <Page size="phone">
      <PageHead title="Sign in by mail" />
      <Sheet lid="domed">
        <ActionForm
          action={signInByLink}
          schema="mailed-link"
          formKey={freshKey()}
          hidden={{ ...link.data, _next: nextPath(callbackUrl) }}
          className="form"
        >
          <p>
            This link is for <b>{link.data.email}</b>. It works once.
          </p>
          <SubmitButton sending="Signing in">Sign in</SubmitButton>
        </ActionForm>
        <LinkButton href="/sign-in" kind="plain">
          Another way in
        </LinkButton>
      </Sheet>
    </Page>
  )
}

function NoLink() {
  const refusal = linkIsOver()
  noteRefusal(refusal.status)
  return (
    <Page size="phone">
      <PageHead title="Sign in by mail" />
      <Sheet lid="flat">
        <Notice refusal={refusal} />
        <LinkButton href="/sign-in">To the sign-in</LinkButton>
      </Sheet>
    </Page>
  )
}
