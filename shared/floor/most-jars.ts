/**
 * The most jars that a kettle batch can give by its recipe: the recipe's highest yield, as often as the tested batch is in the kettle.
 *
 * @param given - what one tested batch gives in the jars that are used
 * @param plannedJars - what the plan counted on; tells how many tested batches are in the kettle (at least one)
 */
export function mostJars(given: { readonly typical: number; readonly high: number }, plannedJars: number): number {
  const batches = Math.max(1, Math.round(plannedJars / Math.max(1, given.typical)))
  return given.high * batches
}
