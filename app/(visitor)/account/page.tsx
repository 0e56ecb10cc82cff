import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { ActionForm } from '@/app/_forms/action-form'
import { FieldEntry } from '@/app/_forms/entries'
import { Button } from '@/app/_ui/button'
import { Facts } from '@/app/_ui/facts'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Said } from '@/app/_ui/said'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { currentUser } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { setPasswordAction, signOutEverywhereAction } from './actions'

export const metadata: Metadata = { title: 'Your account' }

/** What is kept of an account, a new password, and the way out on every device. */
export default async function AccountPage({ searchParams }: { searchParams: Promise<Record<string, unknown>> }) {
  const user = await currentUser()
  if (!user) redirect('/sign-in?callbackUrl=%2Faccount')
  const { saved } = await searchParams
  return (
    <Page size="phone">
      <PageHead title="Your account" />
      <div className="stack">
        <Sheet lid="sunk">
          <Facts
            facts={[
              { label: 'Name', value: user.name },
              { label: 'E-mail', value: user.email },
            ]}
          />
        </Sheet>
        <Sheet lid="flat" lidWords="If you like" title="New password">
          <Said>{saved === 'password' && 'The new password is kept. Every other device is signed out.'}</Said>
          <ActionForm action={setPasswordAction} schema="set-password" formKey={freshKey()} className="form">
            <FieldEntry
              name="password"
              label="New password"
              hint="At least 10 characters. Every other device is signed out."
              type="password"
              autoComplete="new-password"
              required
              maxLength={200}
            />
            <SubmitButton kind="plain" sending="Keeping it">
              Keep the new password
            </SubmitButton>
          </ActionForm>
        </Sheet>
        <Sheet lid="flat" lidWords="If you need it" title="Signed in somewhere you should not be?">
          <p>This ends every session of this account, here as well. You sign in again with your password or a mailed link.</p>
          <form action={signOutEverywhereAction}>
            <Button kind="grave">Sign out everywhere</Button>
          </form>
        </Sheet>
      </div>
    </Page>
  )
}
