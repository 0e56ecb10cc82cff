import type { Metadata } from 'next'
import Link from 'next/link'
import { produceFill, produceInk } from '@/app/_drawings/produce'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import type { Recipe } from '@/shared/recipes/recipe'
import { RECIPES } from '@/shared/recipes/recipe-library'
import { RECIPE_SECTIONS, sayJarChoice, sayYield, sectionOf } from '@/shared/wording/say-recipe'
import './recipes.css'

export const metadata: Metadata = { title: 'Tested recipes' }

/** The library: every tested recipe, what a batch gives, and whether a process is held for it. */
export default function RecipesPage() {
  return (
    <Page>
      <PageHead
        title="Tested recipes"
        lead={`${RECIPES.length} recipes, each with its publication. A jar keeps on the shelf only by a published process.`}
      />
      <div className="two">
        {RECIPE_SECTIONS.map((section) => (
          <Sheet key={section} lid="sunk" lidWords="From publications" title={section}>
            <ul className="list">
              {RECIPES.filter((recipe) => sectionOf(recipe) === section).map((recipe) => (
                <RecipeLine key={recipe.id} recipe={recipe} />
              ))}
            </ul>
          </Sheet>
        ))}
      </div>
    </Page>
  )
}

function RecipeLine({ recipe }: { recipe: Recipe }) {
  const { id, title, pattern, batch, jars, process, allergens } = recipe
  return (
    <li className="recipe-line">
      <svg width="18" height="48" aria-hidden="true">
        <rect width="18" height="48" fill={produceFill(pattern)} stroke={produceInk(pattern)} strokeWidth="2" />
      </svg>
      <div>
        <Link className="way" href={`/recipes/${id}`} prefetch={false}>
          {title}
        </Link>
        <p>
          One batch: {sayYield(batch.yield, batch.jar)}. {sayJarChoice(jars)}.{allergens.length > 0 && ` Contains ${allergens.join(', ')}.`}
        </p>
        {process === null && (
          <p>
            <b>Fridge or freezer only:</b> no verified process is held.
          </p>
        )}
      </div>
    </li>
  )
}
