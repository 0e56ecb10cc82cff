import 'server-only'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { OWN_RECIPE } from '@/lib/stores/recipes'
import { localMomentOf } from '@/lib/time/local-moment'
import { readOwnRecipe } from '@/shared/forms/saved-own-recipe'
import type { BindingConditionId } from '@/shared/recipes/own-recipe'
import type { OwnRecipe } from '@/shared/recipes/own-recipe-content'
import { sayMoment } from '@/shared/time/say-moment'

/** A recipe of the group's own in its newest version. */
export interface ListedOwnRecipe {
  readonly own: OwnRecipe
  readonly isRetired: boolean
}

/** The group's own recipes by title, those in use first. Three statements, whatever their number. */
export async function ownRecipes(groupId: string, db: Tx = database()): Promise<ListedOwnRecipe[]> {
  const rows = await db.ownRecipe.findMany({
    where: { groupId },
    select: { id: true, retiredAt: true, versions: { orderBy: { number: 'desc' }, distinct: ['groupId', 'recipeId'], ...OWN_RECIPE } },
  })
  const listed = rows.flatMap(({ id, retiredAt, versions: [newest] }) =>
    newest ? [{ own: readOwnRecipe(id, newest), isRetired: retiredAt !== null }] : [],
  )
  return listed.sort((a, b) => Number(a.isRetired) - Number(b.isRetired) || a.own.content.title.localeCompare(b.own.content.title, 'en'))
}

/** Who confirmed a condition, and when, on the group's clock. */
export interface ConfirmedBy {
  readonly id: BindingConditionId
  readonly statement: string
  readonly edition: string
  readonly by: string
  readonly at: string
}

/** Everything that the page of one recipe shows. */
export interface OwnRecipePage extends ListedOwnRecipe {
  readonly confirmedBy: readonly ConfirmedBy[]
  readonly writtenBy: string
  readonly writtenAt: string
  /** Days that were made with it, by date, with the version that each keeps. */
  readonly days: readonly { readonly id: string; readonly name: string; readonly date: Date; readonly version: number }[]
}

/** Reads one recipe of the group; null when it has no such one. A fixed number of statements. */
export async function ownRecipePage(groupId: string, recipeId: string, timeZone: string): Promise<OwnRecipePage | null> {
  const db = database()
  const recipe = await db.ownRecipe.findUnique({
    where: { groupId_id: { groupId, id: recipeId } },
    select: { retiredAt: true, versions: { orderBy: { number: 'desc' }, take: 1, select: VERSION_WITH_NAMES } },
  })
  const [newest] = recipe?.versions ?? []
  if (!recipe || !newest) return null
  const { conditions, writtenBy, writtenAt } = newest
  const ids = [writtenBy, ...conditions.map(({ confirmedBy }) => confirmedBy)]
  const [people, preparations] = await Promise.all([
    db.person.findMany({ where: { groupId, id: { in: ids } }, select: { id: true, name: true } }),
    db.preparation.findMany({
      where: { groupId, recipeId, ownVersion: { not: null } },
      select: { ownVersion: true, day: { select: { id: true, name: true, date: true } } },
      orderBy: { day: { date: 'asc' } },
    }),
  ])
  const nameOf = (id: string) => people.find((person) => person.id === id)?.name ?? 'somebody'
  const when = (moment: Date) => sayMoment(localMomentOf(moment, timeZone))
  return {
    own: readOwnRecipe(recipeId, newest),
    isRetired: recipe.retiredAt !== null,
    confirmedBy: conditions.map(({ condition, statement, edition, confirmedBy, confirmedAt }) => ({
      ...{ id: condition as BindingConditionId, statement, edition },
      ...{ by: nameOf(confirmedBy), at: when(confirmedAt) },
    })),
    writtenBy: nameOf(writtenBy),
    writtenAt: when(writtenAt),
    days: preparations.map(({ ownVersion, day }) => ({ ...day, version: ownVersion ?? 1 })),
  }
}

const VERSION_WITH_NAMES = {
  ...OWN_RECIPE.select,
  writtenBy: true,
  writtenAt: true,
  conditions: {
    where: { withdrawnAt: null },
    select: { condition: true, statement: true, edition: true, confirmedBy: true, confirmedAt: true },
  },
} as const
