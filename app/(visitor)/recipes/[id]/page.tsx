import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { type AddressFields, readAddress } from '@/shared/forms/read-address'
import { RecipeYield } from '@/shared/forms/recipe-yield'
import { isBoiledDown } from '@/shared/recipes/boil-down-question'
import type { Recipe } from '@/shared/recipes/recipe'
import { recipeById } from '@/shared/recipes/recipe-library'
import { sayKeeping, sayYield } from '@/shared/wording/say-recipe'
import { NotRead } from '../../processes/not-read'
import { BoilDown } from './boil-down'
import { Buying } from './buying'
import { HowMuch } from './how-much'
import { Ingredients } from './ingredients'
import { RecipeProcess } from './recipe-process'
import { Stages } from './stages'
import { Yields } from './yields'
import '../recipes.css'
import '../../processes/finder.css'

interface RecipePageProps {
  readonly params: Promise<{ id: string }>
  readonly searchParams: Promise<AddressFields>
}

export async function generateMetadata({ params }: Pick<RecipePageProps, 'params'>): Promise<Metadata> {
  return { title: recipeById((await params).id)?.title ?? 'Recipe' }
}

/** One tested recipe: what goes in, what comes out, in which order, and which process it is bound to. */
export default async function RecipePage({ params, searchParams }: RecipePageProps) {
  const recipe = recipeById((await params).id)
  if (!recipe) notFound()
  const asked = readAddress(RecipeYield, await searchParams)
  const read = asked.ok ? asked.value : { typed: {}, asked: null, errors: {} }
  return (
    <Page>
      <PageHead
        kicker={
          <Link className="way" href="/recipes" prefetch={false}>
            Tested recipes
          </Link>
        }
        title={recipe.title}
        lead={`${sayYield(recipe.batch.yield, recipe.batch.jar)} a batch. ${sayKeeping(recipe)}.`}
      />
      <div className="two">
        <div className="stack">
          <Ingredients recipe={recipe} />
          <Stages recipe={recipe} />
        </div>
        <div className="stack">
          <Contains recipe={recipe} />
          <RecipeProcess recipe={recipe} />
          <Yields recipe={recipe} />
          {!asked.ok && <NotRead problem={asked.problem} />}
          <HowMuch recipe={recipe} read={read} />
          {isBoiledDown(recipe) && <BoilDown recipe={recipe} read={read} />}
          <Buying recipe={recipe} />
        </div>
      </div>
    </Page>
  )
}

function Contains({ recipe: { allergens, ingredientList } }: { recipe: Recipe }) {
  const isPartial = ingredientList === 'key-only'
  return (
    <Sheet
      lid={isPartial ? 'flat' : 'sunk'}
      lidWords={isPartial ? 'Not all read' : 'From the recipe'}
      title={allergens.length > 0 ? `Contains ${allergens.join(' and ')}` : 'No allergen named'}
      mark={allergens.length > 0 ? <TradeSymbol name="contains" height={40} /> : undefined}
    >
      <p>
        {isPartial
          ? 'Not every ingredient was read: look at the full recipe before you say what is not in it.'
          : 'By the ingredients of the recipe. Read the labels of what you buy as well.'}
      </p>
    </Sheet>
  )
}
