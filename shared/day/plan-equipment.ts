import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { BurnerUse, PlanBurner, PlanCircuit, PlanPerson } from '@/shared/planning/day-problem'

/** Jars by size; sizes between those counted go at the next larger one (common practice). Half-gallons do not fit a home canner's count. */
export function cannerCapacity(counted: {
  readonly halfPints: number
  readonly pints: number
  readonly quarts: number
}): Partial<Record<JarSize, number>> {
  const all: Partial<Record<JarSize, number>> = {
    'half-pint': counted.halfPints,
    '12-oz': counted.pints,
    pint: counted.pints,
    'pint-and-half': counted.quarts,
    quart: counted.quarts,
  }
  return Object.fromEntries(Object.entries(all).filter(([, jars]) => jars > 0))
}

/** A burner as the kitchen lists it. */
export interface ListedBurner {
  readonly id: string
  readonly label: string
  readonly kind: string
  readonly btuPerHour: number | null
  readonly watts: number | null
  readonly circuit: string
  readonly keptFor: readonly string[]
}

const BURNER_USES: readonly BurnerUse[] = ['canner', 'kettle', 'brine', 'jars']

/** A burner in the planner's words. Words of its own that the planner does not know are left out. */
export function planBurner({ id, label, kind, btuPerHour, watts, circuit, keptFor }: ListedBurner): PlanBurner {
  const forUses = BURNER_USES.filter(
    (use) => keptFor.includes(use) || (use === 'kettle' && (keptFor.includes('jam') || keptFor.includes('cook'))),
  )
  return {
    id,
    label,
    kind: kind === 'gas' || kind === 'portable-electric' ? kind : 'electric',
    btuPerHour,
    watts,
    circuit: circuitName({ id, circuit, watts }),
    ...(keptFor.length > 0 ? { forUses } : {}),
  }
}

/** Every circuit carries its strongest ring and no second one beside it: two portables on one circuit trip it (common practice). */
export function circuitsOf(burners: readonly ListedBurner[]): PlanCircuit[] {
  const watts = new Map<string, number>()
  for (const burner of burners) {
    const name = circuitName(burner)
    if (name !== null) watts.set(name, Math.max(watts.get(name) ?? 0, burner.watts ?? 0))
  }
  return [...watts].map(([id, most]) => ({ id, watts: most }))
}

/** Without a circuit's name, an electric ring is taken to have its own. */
const circuitName = ({ id, circuit, watts }: { id: string; circuit: string; watts: number | null }): string | null =>
  watts === null ? null : circuit || id

const PLANNED_LIMITS: Readonly<Record<string, PlanPerson['limits'][number]>> = {
  'no-lifting': 'no-lifting',
  seated: 'seated',
  'short-standing': 'seated',
  'large-print': 'large-print',
}

/** Limits in the planner's words; whoever may not stand long is planned for work at a seat. */
export const planLimits = (limits: readonly string[]): PlanPerson['limits'] => [
  ...new Set(limits.flatMap((limit) => PLANNED_LIMITS[limit] ?? [])),
]
