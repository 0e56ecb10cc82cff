import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { CommandForm } from '@/app/_forms/command-form'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { groupHead } from '@/lib/queries/group-head'
import { kitchenChoices } from '@/lib/queries/kitchen-choices'
import { type OwnRecipePage, ownRecipePage } from '@/lib/queries/own-recipes'
import { may } from '@/shared/access/policy'
import { conditionsToConfirm } from '@/shared/recipes/conditions-to-confirm'
import { isoDate, sayDate } from '@/shared/time/calendar-date'
import { sayOwnStanding } from '@/shared/wording/say-own-recipe'
import { ChooseTable } from './choose-table'
import { Conditions } from './conditions'
import { OneBatch } from './one-batch'
import { Standing } from './standing'

export const metadata: Metadata = { title: 'Recipe' }

/** One recipe of the group's own: how its jars keep, what is left to confirm, and what one batch is. */
export default async function OwnRecipeView({ params }: { params: Promise<{ groupId: string; recipeId: string }> }) {
  const { groupId, recipeId } = await params
  const actor = await requireActor(groupId, 'see-recipes')
  const { timeZone } = await groupHead(groupId)
  const [found, kitchens] = await Promise.all([ownRecipePage(groupId, recipeId, timeZone), kitchenChoices(groupId)])
  if (!found) notFound()
  const { own, isRetired } = found
  const elevations = kitchens.map(({ elevationFeet }) => elevationFeet)
  const conditions = conditionsToConfirm(own, elevations)
  const edits = may(actor, 'edit-recipes')
  const place = { groupId, recipeId, version: own.version }
  return (
    <Page>
      <PageHead
        kicker={
          <Link className="way" href={`/g/${groupId}/recipes`} prefetch={false}>
            Recipes
          </Link>
        }
        title={own.content.title}
        lead={`${sayOwnStanding(own, elevations)}. Version ${own.version}, written by ${found.writtenBy}, ${found.writtenAt}.`}
        action={
          edits && (
            <LinkButton kind="plain" small href={`/g/${groupId}/recipes/${recipeId}/change`}>
              Change it
            </LinkButton>
          )
        }
      />
      <div className="two">
        <div className="stack">
          <Standing own={own} kitchens={kitchens} open={conditions.filter(({ isConfirmed }) => !isConfirmed).length} />
          {conditions.length > 0 && (
            <Conditions
              {...{ conditions, place }}
              confirmedBy={found.confirmedBy}
              mayConfirm={may(actor, 'edit-day')}
              mayWithdraw={edits}
            />
          )}
          {edits && <ChooseTable {...{ own, kitchens, place }} />}
        </div>
        <div className="stack">
          <OneBatch own={own} />
          <Contains allergens={own.content.allergens} />
          <OnDays groupId={groupId} days={found.days} />
          {edits && <Retire groupId={groupId} recipeId={recipeId} isRetired={isRetired} />}
        </div>
      </div>
    </Page>
  )
}

function Contains({ allergens }: { allergens: readonly string[] }) {
  return (
    <Sheet
      lid="flat"
      lidWords="As the group wrote it"
      title={allergens.length > 0 ? `Contains ${allergens.join(' and ')}` : 'No allergen named'}
      mark={allergens.length > 0 ? <TradeSymbol name="contains" height={40} /> : undefined}
    >
      <p>Read the labels of what you buy as well. Whoever has one of these on their list is told before they ask for jars.</p>
    </Sheet>
  )
}

function OnDays({ groupId, days }: { groupId: string; days: OwnRecipePage['days'] }) {
  if (days.length === 0) return null
  return (
    <Sheet lid="sunk" lidWords="Kept as it was" title="Days that made it">
      <ul className="list">
        {days.map(({ id, name, date, version }) => (
          <li key={id}>
            <Link className="way" href={`/g/${groupId}/days/${id}`} prefetch={false}>
              {name}
            </Link>
            <p>
              {sayDate(isoDate(date))}, version {version}
            </p>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

function Retire({ groupId, recipeId, isRetired }: { groupId: string; recipeId: string; isRetired: boolean }) {
  return (
    <CommandForm
      command="retire-own-recipe"
      groupId={groupId}
      formKey={freshKey()}
      next={`/g/${groupId}/recipes/${recipeId}`}
      fixed={{ recipeId, retired: isRetired ? 'no' : 'yes' }}
    >
      <SubmitButton kind="plain" sending="Saving">
        {isRetired ? 'Offer it for new days again' : 'Offer it for new days no more'}
      </SubmitButton>
    </CommandForm>
  )
}
