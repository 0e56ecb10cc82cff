import type { Metadata } from 'next'
import { CommandForm } from '@/app/_forms/command-form'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { kitchenChoices } from '@/lib/queries/kitchen-choices'
import { DayFields } from '../day-fields'

export const metadata: Metadata = { title: 'A new canning day' }

/** A new day for the calendar. */
export default async function NewDayPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  await requireActor(groupId, 'edit-day')
  const kitchens = await kitchenChoices(groupId)
  return (
    <Page>
      <PageHead title="A new canning day" lead="When, where, and until when households may ask for jars. Recipes come next." />
      <Sheet lid="domed" title="The day">
        {kitchens.length === 0 ? (
          <EmptyState
            text="No kitchen yet. A day needs one, with its elevation and its hours."
            action={<LinkButton href={`/g/${groupId}/kitchens`}>Enter a kitchen</LinkButton>}
          />
        ) : (
          <CommandForm
            command="create-day"
            groupId={groupId}
            formKey={freshKey()}
            next={`/g/${groupId}/days/{dayId}/recipes`}
            className="form"
          >
            <DayFields kitchens={kitchens} first={kitchens.length === 1 ? { kitchenId: kitchens[0]?.id } : {}} />
            <SubmitButton sending="Saving">Save the day and choose recipes</SubmitButton>
          </CommandForm>
        )}
      </Sheet>
    </Page>
  )
}
