/**
 * The allergens that a product contains and a household must not have, in the product's spelling.
 *
 * Compared without regard to case and outer spaces. Both lists come from the same closed list of the group; this does not guess that "nuts" means
 * "walnuts".
 */
export function meetAllergens(ofProduct: readonly string[], ofHousehold: readonly string[]): string[] {
  const plain = (allergen: string) => allergen.trim().toLowerCase()
  const avoided = new Set(ofHousehold.map(plain))
  return ofProduct.filter((allergen) => avoided.has(plain(allergen)))
}
