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
  readonly method: Method
  /** The published row they were planned for: two foods in one canner must share it. */
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
 *
 * @param waiting - jars that go in, by batch; every count at least 1
 */
export function checkLoading(waiting: readonly WaitingJars[], canner: CannerNow, operator: Operator): Result<number, FloorProblem> {
  const [first] = waiting
  if (!first) return refuse({ kind: 'nothing-to-load' })
  const problem = mixed(waiting) ?? cannerProblem(first, canner) ?? operatorProblem(canner.method, operator)
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

function cannerProblem({ method }: WaitingJars, canner: CannerNow): FloorProblem | undefined {
  if (canner.outOfUse !== null) return { kind: 'canner-out-of-use', canner: canner.label, why: canner.outOfUse }
  if (canner.busyWith !== null) return { kind: 'canner-busy', canner: canner.label, load: canner.busyWith }
  return canner.method === method ? undefined : { kind: 'canner-method', canner: canner.label, method: canner.method, wanted: method }
}

function operatorProblem(method: Method, { name, ageClass, skills }: Operator): FloorProblem | undefined {
  if (ageClass !== 'adult') return { kind: 'operator-too-young', operator: name }
  const skill = operatorSkill(method)
  return skills.includes(skill) ? undefined : { kind: 'operator-unskilled', operator: name, skill }
}
