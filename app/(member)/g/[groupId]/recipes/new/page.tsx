import type { Metadata } from 'next'
import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { RecipeEntries } from '../recipe-entries'

export const metadata: Metadata = { title: 'A recipe of our own' }

/** Writes a recipe of the group's own down. */
export default async function NewRecipePage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  await requireActor(groupId, 'edit-recipes')
  return (
    <Page>
      <PageHead
        kicker={
          <Link className="way" href={`/g/${groupId}/recipes`} prefetch={false}>
            Recipes
          </Link>
        }
        title="A recipe of our own"
        lead="It is fridge or freezer from the start. A published process may be chosen for it afterwards."
      />
      <Sheet lid="domed" title="One batch">
        <CommandForm
          command="add-own-recipe"
          groupId={groupId}
          formKey={freshKey()}
          next={`/g/${groupId}/recipes/{recipeId}`}
          className="form"
        >
          <RecipeEntries />
          <SubmitButton sending="Saving">Save the recipe</SubmitButton>
        </CommandForm>
      </Sheet>
    </Page>
  )
}
