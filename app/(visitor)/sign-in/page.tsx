import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { ActionForm } from '@/app/_forms/action-form'
import { FieldEntry } from '@/app/_forms/entries'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { currentUser } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { nextPath } from '@/lib/http/next-path'
import { signInProblem } from '@/shared/wording/account'
import { mailLinkAction } from './actions'
import { SignInForm } from './sign-in-form'

// Under "no-referrer" a posted form says that it comes from nowhere, and without script it would be refused. Other sites learn nothing either way.
export const metadata: Metadata = { title: 'Sign in', referrer: 'same-origin' }

/** Two ways in: a password, or a link by mail. */
export default async function SignInPage({ searchParams }: { searchParams: Promise<Record<string, unknown>> }) {
  const { callbackUrl, error } = await searchParams
  const next = nextPath(callbackUrl)
  if (await currentUser()) redirect(next)
  const problem = signInProblem(typeof error === 'string' ? error : undefined)
  return (
    <Page size="phone">
      <PageHead title="Sign in" />
      <div className="stack">
        <Sheet lid="domed">
          <SignInForm next={next} formKey={freshKey()} first={problem ? { refusal: problem } : {}} />
        </Sheet>
        <Sheet lid="flat" lidWords="Another way" title="Or come in by mail">
          <ActionForm action={mailLinkAction} schema="mail-link" formKey={freshKey()} hidden={{ _next: next }} className="form">
            <FieldEntry
              name="email"
              label="Send a link to"
              hint="The link works once, for 15 minutes."
              type="email"
              inputMode="email"
              autoComplete="email"
              required
              maxLength={254}
            />
            <SubmitButton kind="plain" sending="Sending">
              Mail me a link
            </SubmitButton>
          </ActionForm>
        </Sheet>
        <p>
          No account yet?{' '}
          <Link href={`/sign-up?callbackUrl=${encodeURIComponent(next)}`} prefetch={false}>
            Make one
          </Link>
          .
        </p>
      </div>
    </Page>
  )
}
