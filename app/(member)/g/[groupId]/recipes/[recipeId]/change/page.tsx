import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { CommandForm } from '@/app/_forms/command-form'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { groupHead } from '@/lib/queries/group-head'
import { ownRecipePage } from '@/lib/queries/own-recipes'
import { RecipeEntries } from '../../recipe-entries'

export const metadata: Metadata = { title: 'Change a recipe' }

/** Writes the next version of a recipe; days keep the one they were made with. */
export default async function ChangeRecipePage({ params }: { params: Promise<{ groupId: string; recipeId: string }> }) {
  const { groupId, recipeId } = await params
  await requireActor(groupId, 'edit-recipes')
  const { timeZone } = await groupHead(groupId)
  const found = await ownRecipePage(groupId, recipeId, timeZone)
  if (!found) notFound()
  const { own } = found
  const path = `/g/${groupId}/recipes/${recipeId}`
  return (
    <Page>
      <PageHead
        kicker={
          <Link className="way" href={path} prefetch={false}>
            {own.content.title}
          </Link>
        }
        title="Change the recipe"
        lead="Days keep the version they were made with. A change of ingredients, quantities, pack or jars drops the confirmations that rest on it."
      />
      <Sheet lid="domed" title="One batch" aside={`version ${own.version}`}>
        <CommandForm
          command="change-own-recipe"
          groupId={groupId}
          formKey={freshKey()}
          next={path}
          fixed={{ recipeId, version: own.version }}
          className="form"
        >
          <RecipeEntries first={own.content} />
          <SubmitButton sending="Saving">Save as version {own.version + 1}</SubmitButton>
        </CommandForm>
      </Sheet>
    </Page>
  )
}
