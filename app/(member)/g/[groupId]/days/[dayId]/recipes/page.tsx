import type { Metadata } from 'next'
import { EmptyState } from '@/app/_ui/empty-state'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { dayProducts } from '@/lib/queries/day-claims'
import { dayForecast } from '@/lib/queries/day-forecast'
import { requireDayHead } from '@/lib/queries/day-head'
import { ownRecipes } from '@/lib/queries/own-recipes'
import { may } from '@/shared/access/policy'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { recipeOfOwn } from '@/shared/recipes/own-recipe-content'
import { recipeById } from '@/shared/recipes/recipe-library'
import { sayDate } from '@/shared/time/calendar-date'
import { DayPlace } from '../_overview/day-place'
import { JarsNow } from '../_overview/jars-now'
import { ChooseRecipeSheet } from './choose-recipe-sheet'
import { ProductSheet } from './product-sheet'

export const metadata: Metadata = { title: 'Recipes' }

type Props = { params: Promise<{ groupId: string; dayId: string }>; searchParams: Promise<{ recipe?: string | string[] }> }

/** What the day makes: each recipe with its published process at this kitchen, and how many jars are offered. */
export default async function RecipesPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-day')
  const mayEdit = may(actor, 'edit-day')
  const [day, products, written] = await Promise.all([
    requireDayHead(groupId, dayId),
    dayProducts(groupId, dayId),
    mayEdit ? ownRecipes(groupId) : [],
  ])
  const forecast = await dayForecast(groupId, dayId, products)
  const { recipe } = await searchParams
  const own = written.filter(({ isRetired }) => !isRetired).map((each) => recipeOfOwn(each.own))
  const chosen = typeof recipe === 'string' ? (recipeById(recipe) ?? own.find(({ id }) => id === recipe)) : undefined
  const mayChoose = mayEdit && (day.state === 'draft' || day.state === 'claiming')
  return (
    <Page>
      <PageHead
        kicker={
          <DayPlace
            groupId={groupId}
            dayId={dayId}
            name={day.name}
            after={`${sayDate(day.date)}, ${day.kitchen.name}, ${sayElevation(day.kitchen.elevationFeet)}`}
          />
        }
        title="What we make"
        lead={
          products.length > 0
            ? 'Minutes are the published ones for this kitchen’s elevation. Without a published process it is fridge or freezer.'
            : 'Choose tested recipes; their process is looked up for this kitchen’s elevation.'
        }
      />
      {products.length === 0 && (
        <Sheet lid="domed" title="Nothing chosen yet">
          <EmptyState
            drawing={<TradeSymbol name="jar-gap" height={64} />}
            text={mayChoose ? 'No recipe yet. Choose one below to see how many jars the kitchen can do.' : 'No recipe is chosen yet.'}
          />
        </Sheet>
      )}
      {products.map((product) => (
        <ProductSheet key={product.id} {...{ groupId, day, product, mayEdit }} />
      ))}
      <JarsNow {...{ day, products, forecast }} />
      {mayChoose && <ChooseRecipeSheet {...{ groupId, day, chosen, own }} taken={products.map((product) => product.recipe.id)} />}
    </Page>
  )
}
