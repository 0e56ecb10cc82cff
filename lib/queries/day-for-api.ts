import 'server-only'
import { dayProducts } from '@/lib/queries/day-claims'
import { readDayHead } from '@/lib/queries/day-head'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import type { DayForApi } from '@/shared/forms/day-for-api'

/**
 * A day as `/api/v1` gives it: its hours, products, and what this person may see of claims and plan; null when the group has no such day.
 *
 * A fixed number of statements. Times are minutes after midnight of the day's date on the kitchen's clock.
 */
export async function dayForApi(actor: Actor, dayId: string): Promise<DayForApi | null> {
  const { groupId } = actor
  const [day, products, stored] = await Promise.all([
    readDayHead(groupId, dayId),
    dayProducts(groupId, dayId),
    may(actor, 'see-plan') ? readSavedPlan(groupId, dayId) : null,
  ])
  if (!day) return null
  const seesClaims = may(actor, 'see-claims')
  const { id, name, date, state, version, timeZone, accessAt, peopleArriveAt, firstLoadAt, cannersEmptyBy, hardEnd } = day
  return {
    ...{ id, name, date, state, version, timeZone, accessAt, peopleArriveAt, firstLoadAt, cannersEmptyBy, hardEnd },
    kitchen: { id: day.kitchenId, name: day.kitchen.name, elevationFeet: day.kitchen.elevationFeet },
    claimsCloseAt: day.claimsCloseAt?.toISOString() ?? null,
    products: products.map((product) => ({
      ...{ id: product.id, letter: product.letter, recipeId: product.recipe.id, title: product.recipe.title, jarSize: product.jarSize },
      ...{
        allergens: [...product.recipe.allergens],
        method: product.process?.method ?? null,
        offered: product.offered,
        claimed: product.claimed,
      },
      ...{ processMinutes: product.process?.minutes ?? null, processPsi: product.process?.psi ?? null },
      processSource: product.process?.source ?? null,
      claimedByYou: seesClaims ? (product.claims.get(actor.householdId) ?? 0) : null,
    })),
    plan: stored && {
      number: stored.number,
      finishAt: stored.plan.finishAt,
      cannerMinutes: stored.plan.cannerMinutes,
      batches: stored.plan.batches.map(({ code, preparationId, kettleId, cookStart, fillEnd, jars }) => ({
        ...{ code, preparationId, kettleId, cookStart, fillEnd, jars: jars.typical },
      })),
      loads: stored.plan.loads.map(
        ({ code, cannerId, preparationId, loadAt, boilAt, processEndAt, emptyAt, processMinutes, psi, source }) => ({
          ...{ code, cannerId, preparationId, loadAt, boilAt, processEndAt, emptyAt, processMinutes, psi, source },
        }),
      ),
    },
  }
}
