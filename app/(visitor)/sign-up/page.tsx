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
import { signUpAction } from './actions'

export const metadata: Metadata = { title: 'Make an account' }

/** A name, an address, a password: no more is asked for. */
export default async function SignUpPage({ searchParams }: { searchParams: Promise<Record<string, unknown>> }) {
  const next = nextPath((await searchParams).callbackUrl)
  if (await currentUser()) redirect(next)
  return (
    <Page size="phone">
      <PageHead title="Make an account" lead="It costs nothing and belongs to no group until you join one." />
      <Sheet lid="domed">
        <ActionForm action={signUpAction} schema="sign-up" formKey={freshKey()} hidden={{ _next: next }} className="form">
          <FieldEntry name="name" label="What neighbours call you" autoComplete="name" required maxLength={80} />
          <FieldEntry name="email" label="E-mail" type="email" inputMode="email" autoComplete="username" required maxLength={254} />
          <FieldEntry
            name="password"
            label="Password"
            hint="At least 10 characters. A few plain words are easy to keep and hard to guess."
            type="password"
            autoComplete="new-password"
            required
            maxLength={200}
          />
          <SubmitButton sending="Making it">Make the account</SubmitButton>
        </ActionForm>
      </Sheet>
      <p className="after">
        You have one?{' '}
        <Link href={`/sign-in?callbackUrl=${encodeURIComponent(next)}`} prefetch={false}>
          Sign in
        </Link>
        .
      </p>
    </Page>
  )
}
