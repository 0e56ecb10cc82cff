import type { Metadata } from 'next'
import Link from 'next/link'
import { produceFill, produceInk } from '@/app/_drawings/produce'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { kitchenChoices } from '@/lib/queries/kitchen-choices'
import { type ListedOwnRecipe, ownRecipes } from '@/lib/queries/own-recipes'
import { may } from '@/shared/access/policy'
import type { ProducePattern } from '@/shared/recipes/recipe'
import { RECIPES } from '@/shared/recipes/recipe-library'
import { sayOwnStanding } from '@/shared/wording/say-own-recipe'
import { RECIPE_SECTIONS, sayJarChoice, sayYield, sectionOf } from '@/shared/wording/say-recipe'
import '@/app/(visitor)/recipes/recipes.css'

export const metadata: Metadata = { title: 'Recipes' }

/** What the group may make: its own recipes with how their jars keep, and the published ones. */
export default async function GroupRecipesPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-recipes')
  const [own, kitchens] = await Promise.all([ownRecipes(groupId), kitchenChoices(groupId)])
  const edits = may(actor, 'edit-recipes')
  const elevations = kitchens.map(({ elevationFeet }) => elevationFeet)
  return (
    <Page>
      <PageHead
        title="Recipes"
        lead="A jar keeps on a shelf only by a published process. Everything else goes to the fridge or freezer."
        action={edits && <LinkButton href={`/g/${groupId}/recipes/new`}>Write our own down</LinkButton>}
      />
      <div className="two">
        <Sheet lid={own.length === 0 ? 'flat' : 'sunk'} lidWords={own.length === 0 ? 'None yet' : 'Written by us'} title="Our own">
          {own.length === 0 ? (
            <EmptyState text="No recipe of our own yet. Write one down; it is fridge or freezer until a published process is confirmed for it." />
          ) : (
            <ul className="list">
              {own.map((listed) => (
                <OwnLine key={listed.own.id} groupId={groupId} listed={listed} elevations={elevations} />
              ))}
            </ul>
          )}
        </Sheet>
        {RECIPE_SECTIONS.map((section) => (
          <Sheet key={section} lid="sunk" lidWords="From publications" title={section}>
            <ul className="list">
              {RECIPES.filter((recipe) => sectionOf(recipe) === section).map(({ id, title, pattern, batch, jars, process }) => (
                <RecipeLine
                  key={id}
                  {...{ title, pattern }}
                  href={`/recipes/${id}`}
                  words={`One batch: ${sayYield(batch.yield, batch.jar)}. ${sayJarChoice(jars)}.`}
                  remark={process ? undefined : 'Fridge or freezer: no verified process is held.'}
                />
              ))}
            </ul>
          </Sheet>
        ))}
      </div>
    </Page>
  )
}

function OwnLine({ groupId, listed: { own, isRetired }, elevations }: OwnLineProps) {
  const { title, pattern, yields, allergens } = own.content
  const [usual] = yields
  return (
    <RecipeLine
      {...{ title, pattern }}
      href={`/g/${groupId}/recipes/${own.id}`}
      words={`${usual ? `One batch: ${sayYield(usual, usual.jar)}.` : ''}${allergens.length > 0 ? ` Contains ${allergens.join(', ')}.` : ''}`}
      remark={isRetired ? 'Out of use for new days.' : `${sayOwnStanding(own, elevations)}.`}
    />
  )
}

type OwnLineProps = { groupId: string; listed: ListedOwnRecipe; elevations: readonly number[] }

function RecipeLine({ title, pattern, href, words, remark }: RecipeLineProps) {
  return (
    <li className="recipe-line">
      <svg width="18" height="48" aria-hidden="true">
        <rect width="18" height="48" fill={produceFill(pattern)} stroke={produceInk(pattern)} strokeWidth="2" />
      </svg>
      <div>
        <Link className="way" href={href} prefetch={false}>
          {title}
        </Link>
        <p>{words}</p>
        {remark && (
          <p>
            <b>{remark}</b>
          </p>
        )}
      </div>
    </li>
  )
}

type RecipeLineProps = { title: string; pattern: ProducePattern; href: string; words: string; remark: string | undefined }
