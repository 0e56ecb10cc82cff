import { meetAllergens } from '@/shared/allocation/meet-allergens'

/** A household as far as allergens go. */
export interface Avoiding {
  readonly allergens: readonly string[]
  readonly people: readonly { readonly name: string; readonly allergies: readonly string[] }[]
}

/** One allergen of a product that a household must not have, and the people whose list names it; none when it stands on the household's list. */
export interface AvoidedAllergen {
  readonly allergen: string
  readonly people: readonly string[]
}

/**
 * The allergens of a product that somebody in the household must not have, in the product's order and spelling.
 *
 * Names are for that household and the organiser alone: leave them out of anything that others see.
 */
export function whoAvoids(ofProduct: readonly string[], household: Avoiding): AvoidedAllergen[] {
  return ofProduct.flatMap((allergen) => {
    const people = household.people.filter((person) => meetAllergens([allergen], person.allergies).length > 0).map((person) => person.name)
    const isListed = people.length > 0 || meetAllergens([allergen], household.allergens).length > 0
    return isListed ? [{ allergen, people }] : []
  })
}
