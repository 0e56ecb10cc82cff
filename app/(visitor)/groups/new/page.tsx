import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { ActionForm } from '@/app/_forms/action-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { currentUser } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { CURRENCIES } from '@/shared/forms/group'
import { TIME_ZONES } from '@/shared/time/time-zones'
import { createGroupAction } from './actions'

export const metadata: Metadata = { title: 'Make a group' }

/** The group, and its founder's household. */
export default async function NewGroupPage() {
  const user = await currentUser()
  if (!user) redirect('/sign-in?callbackUrl=%2Fgroups%2Fnew')
  return (
    <Page size="phone">
      <PageHead title="Make a group" lead="You will be its organiser. Others join by invitation." />
      <ActionForm action={createGroupAction} schema="create-group" formKey={freshKey()} className="stack">
        <Sheet lid="domed" title="The group">
          <div className="form">
            <FieldEntry name="name" label="Name of the group" required maxLength={60} />
            <FieldEntry
              name="code"
              label="Short code"
              hint="Two to four letters, without I and O. Every lot number begins with it, so it never changes."
              required
              maxLength={4}
              autoComplete="off"
              short
            />
            <SelectEntry name="timeZone" label="Time zone of the kitchen" ask="Choose one" required options={TIME_ZONES} />
            <SelectEntry
              name="currency"
              label="Money is counted in"
              options={CURRENCIES.map((value) => ({ value, label: value }))}
              first="USD"
            />
            <FieldEntry
              name="askLine"
              label="Whom does somebody ask who holds a jar?"
              hint="Printed on every label and shown to anybody who reads its code: a phone, an address, a place."
              required
              maxLength={160}
            />
          </div>
        </Sheet>
        <Sheet lid="domed" title="You">
          <div className="form">
            <FieldEntry name="personName" label="What neighbours call you" first={user.name} required maxLength={80} />
            <FieldEntry
              name="householdName"
              label="Name of your household"
              hint="Jars and costs go by household."
              required
              maxLength={60}
            />
            <FieldEntry
              name="headcount"
              label="People in it"
              type="number"
              inputMode="numeric"
              min={1}
              max={50}
              first={1}
              unit="people"
              required
              short
            />
          </div>
        </Sheet>
        <SubmitButton sending="Making it">Make the group</SubmitButton>
      </ActionForm>
    </Page>
  )
}
