import { type CannerCapacity, cannerHolds } from '@/shared/floor/canner-holds'
import type { FloorProblem } from '@/shared/floor/floor-problem'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'
import { ok, type Result, refuse } from '@/shared/result/result'

/** Jars of one filled kettle batch that stand before the canner. */
export interface WaitingJars {
  readonly batch: string
  readonly jars: number
  readonly jarSize: JarSize
  readonly pack: Pack
  /** The kind of canner they were planned for. */
  readonly method: Method
  /** The published row for the canner that is used: two batches in one canner must share it. */
  readonly processRowKey: string
  /** Minutes their scheduled process asks for in this canner. */
  readonly processMinutes: number
}

/** The canner they go into, as it stands now. */
export interface CannerNow extends CannerCapacity {
  readonly label: string
  readonly method: Method
  readonly gauge: Gauge | null
  readonly outOfUse: string | null
  /** Code of the load that is in it, null when it is empty. */
  readonly busyWith: string | null
}

/** Who minds it. */
export interface Operator {
  readonly name: string
  readonly ageClass: string
  readonly skills: readonly string[]
}

/** "boiling-water-operator": the skill that each method asks of whoever minds the canner (this group's own rule, common practice). */
export const operatorSkill = (method: Method): string => `${method === 'atmospheric-steam' ? 'steam' : method}-operator`

/**
 * Whether these jars may go into this canner with this operator.
 *
 * One load is one scheduled process: one method, one pack, one jar size, one time. Jars of two batches go together only when all of that is the same.
 * That a process is published for the canner itself is looked up before this is asked.
 *
 * @param waiting - jars that go in, by batch; every count at least 1
 */
export function checkLoading(waiting: readonly WaitingJars[], canner: CannerNow, operator: Operator): Result<number, FloorProblem> {
  const [first] = waiting
  if (!first) return refuse({ kind: 'nothing-to-load' })
  const problem = mixed(waiting) ?? cannerProblem(canner) ?? operatorProblem(canner.method, operator)
  if (problem) return refuse(problem)

  const jars = waiting.reduce((sum, batch) => sum + batch.jars, 0)
  const holds = cannerHolds(canner, first.jarSize)
  return jars > holds ? refuse({ kind: 'canner-too-small', canner: canner.label, jars, holds, jarSize: first.jarSize }) : ok(jars)
}

function mixed(waiting: readonly WaitingJars[]): FloorProblem | undefined {
  const differ = (of: (batch: WaitingJars) => unknown) => new Set(waiting.map(of)).size > 1
  if (differ((batch) => batch.method)) return { kind: 'mixed-load', what: 'methods' }
  if (differ((batch) => batch.jarSize)) return { kind: 'mixed-load', what: 'jar sizes' }
  if (differ((batch) => batch.pack)) return { kind: 'mixed-load', what: 'packs' }
  if (differ((batch) => batch.processMinutes)) return { kind: 'mixed-load', what: 'minutes' }
  return differ((batch) => batch.processRowKey) ? { kind: 'mixed-load', what: 'processes' } : undefined
}

function cannerProblem({ label, outOfUse, busyWith }: CannerNow): FloorProblem | undefined {
  if (outOfUse !== null) return { kind: 'canner-out-of-use', canner: label, why: outOfUse }
  return busyWith === null ? undefined : { kind: 'canner-busy', canner: label, load: busyWith }
}

/** Why this person may not mind a canner of this method; undefined when they may. */
export function operatorProblem(
  method: Method,
  { name, ageClass, skills }: Operator,
): Extract<FloorProblem, { readonly kind: 'operator-too-young' | 'operator-unskilled' }> | undefined {
  if (ageClass !== 'adult') return { kind: 'operator-too-young', operator: name }
  const skill = operatorSkill(method)
  return skills.includes(skill) ? undefined : { kind: 'operator-unskilled', operator: name, skill }
}
