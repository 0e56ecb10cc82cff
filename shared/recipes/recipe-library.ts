import { JAMS_AND_JELLIES } from './data/jams-and-jellies'
import { PICKLES_AND_RELISHES } from './data/pickles-and-relishes'
import { PLAIN_PACKS } from './data/plain-packs'
import { SAUCES_AND_BUTTERS } from './data/sauces-and-butters'
import type { Recipe } from './recipe'

/** Every tested recipe of the library. */
export const RECIPES: readonly Recipe[] = [...JAMS_AND_JELLIES, ...PICKLES_AND_RELISHES, ...SAUCES_AND_BUTTERS, ...PLAIN_PACKS]

const BY_ID: ReadonlyMap<string, Recipe> = new Map(
  RECIPES.flatMap((recipe) => [recipe.id, ...recipe.alsoKnownAs].map((id) => [id, recipe] as const)),
)

/** The recipe with this id, or with another id it is known under (scenario ids such as "plum_jam" too); undefined when there is none. */
export const recipeById = (id: string): Recipe | undefined => BY_ID.get(id)
