import type { Scenario } from './scenario-format'
import type { Path } from './scenario-steps'

/** Our own assumption where a scenario lists no pots: it holds the largest tested batch of its recipes. */
const POT_LITRES = 8

/** Where the file lists no pots: one for each burner, so that pots alone never hold a plan up. */
export function unlistedPots({ kitchen, pots }: Scenario): { readonly path: Path; readonly label: string; readonly litres: number }[] {
  if (pots.length > 0) return []
  return kitchen.burners.map(({ id }, index) => ({ path: ['kitchen', 'burners', index], label: `Pot ${id}`, litres: POT_LITRES }))
}

/** One fill table, or, where the file tells nothing of pots and tables, one for each recipe. */
export const fillTablesOf = ({ pots, recipes }: Scenario): number => (pots.length > 0 ? 1 : recipes.length)

/** What is told about it. */
export function assumedOf(scenario: Scenario): { readonly path: Path; readonly why: string }[] {
  const pots = unlistedPots(scenario).length
  if (pots === 0) return []
  const entered = `${pots} pots of ${POT_LITRES} L and ${fillTablesOf(scenario)} tables were entered`
  return [{ path: ['kitchen'], why: `the file lists no pots and no fill tables: ${entered}; change them where they differ` }]
}
