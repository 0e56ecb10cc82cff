import type { DayPlan, JarRange, PlannedLoad } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { BatchSoFar, DaySoFar } from '@/shared/planning/day-so-far'
import { cannersFor, type SplitBatch, type SplitJob } from '@/shared/planning/split-demand'

/** Why something of the plan that stood is not in the new one. */
export type DropReason = 'abandoned' | 'no-produce' | 'no-time' | 'cannot-wait' | 'in-another-load'

/** Something that the new plan leaves out. */
export type Dropped = {
  readonly of: 'batch' | 'load'
  readonly id: string
  readonly code: string
  /** Jars it would typically have given. */
  readonly jars: number
  readonly why: DropReason
}

/** A load still to come, with the code it keeps. */
export type JobLeft = { readonly job: SplitJob; readonly loadCodes: readonly string[] }

export type JobsLeft = { readonly jobs: readonly JobLeft[]; readonly dropped: readonly Dropped[] }

/**
 * What is still to be loaded: the plan's loads that are in no canner yet, with the jars that there really are, and new loads for jars that
 * wait and belong to none of them.
 */
export function jobsLeft(problem: DayProblem, plan: DayPlan, soFar: DaySoFar): JobsLeft {
  const factOf = new Map(soFar.batches.map((batch) => [batch.batchId, batch]))
  const gone = batchesGone(plan, soFar, factOf)
  const seen = new Set(soFar.loads.filter(({ state }) => state !== 'planned').map(({ loadId }) => loadId))
  const jarsLeft = new Map(soFar.batches.flatMap(({ batchId, waiting }) => (waiting ? [[batchId, waiting.jars] as const] : [])))
  const loads: PlannedLoad[] = []
  const droppedLoads: Dropped[] = []
  for (const load of plan.loads.filter(({ id }) => !seen.has(id))) {
    const parts = load.batchParts.flatMap((part) => {
      if (gone.has(part.batchId)) return []
      const jars = takeJars(part.jars, factOf.get(part.batchId), part.batchId, jarsLeft)
      return jars ? [{ batchId: part.batchId, jars }] : []
    })
    if (parts.length > 0) loads.push({ ...load, batchParts: parts })
    else {
      const why = load.batchParts.flatMap((part) => gone.get(part.batchId)?.why ?? [])[0] ?? 'in-another-load'
      droppedLoads.push({ of: 'load', id: load.id, code: load.code, jars: typicalJars(load), why })
    }
  }
  const jobs = [...together(plan, factOf, loads), ...newLoads(problem, plan, soFar, factOf, jarsLeft)]
  return { jobs, dropped: [...gone.values(), ...droppedLoads] }
}

const typicalJars = (load: PlannedLoad) => load.batchParts.reduce((sum, part) => sum + part.jars.typical, 0)

function batchesGone(plan: DayPlan, { setbacks }: DaySoFar, factOf: ReadonlyMap<string, BatchSoFar>): Map<string, Dropped> {
  const gone = new Map<string, Dropped>()
  const drop = (batch: DayPlan['batches'][number], why: DropReason) =>
    gone.set(batch.id, { of: 'batch', id: batch.id, code: batch.code, jars: batch.jars.typical, why })
  for (const batch of plan.batches) if (factOf.get(batch.id)?.state === 'abandoned') drop(batch, 'abandoned')
  for (const setback of setbacks) {
    if (setback.kind !== 'produce-short') continue
    const own = plan.batches.filter((batch) => batch.preparationId === setback.preparationId && !gone.has(batch.id))
    const isBegun = (id: string) => (factOf.get(id)?.state ?? 'planned') !== 'planned'
    const toCome = own.filter(({ id }) => !isBegun(id)).sort((a, b) => a.cookStart - b.cookStart)
    for (const batch of toCome.slice(Math.max(0, setback.batches - (own.length - toCome.length)))) drop(batch, 'no-produce')
  }
  return gone
}

/** The jars of one part: those planned while the batch is to be filled, those that wait once it is; null when none are left for it. */
function takeJars(planned: JarRange, fact: BatchSoFar | undefined, batchId: string, jarsLeft: Map<string, number>): JarRange | null {
  if (fact?.state !== 'filled') return planned
  const left = jarsLeft.get(batchId) ?? 0
  const jars = Math.min(left, Math.max(planned.high, planned.typical))
  jarsLeft.set(batchId, left - jars)
  return jars > 0 ? exactly(jars) : null
}

const exactly = (jars: number): JarRange => ({ low: jars, typical: jars, high: jars })

/** Loads that share a batch are one job: its jars meet their canners together. */
function together(plan: DayPlan, factOf: ReadonlyMap<string, BatchSoFar>, loads: readonly PlannedLoad[]): JobLeft[] {
  const groups: PlannedLoad[][] = []
  for (const load of loads) {
    const shares = (other: PlannedLoad) => other.batchParts.some((part) => load.batchParts.some((own) => own.batchId === part.batchId))
    const group = groups.find((members) => members.some(shares))
    if (group) group.push(load)
    else groups.push([load])
  }
  return groups.map((members) => {
    const batchIds = [...new Set(members.flatMap((load) => load.batchParts.map((part) => part.batchId)))]
    const batches = batchIds.flatMap((id) => splitBatch(plan, factOf, id) ?? [])
    const preparationId = members[0]?.preparationId ?? ''
    return {
      job: { preparationId, batches, loads: members.map((load) => ({ parts: load.batchParts })) },
      loadCodes: members.map((load) => load.code),
    }
  })
}

function splitBatch(plan: DayPlan, factOf: ReadonlyMap<string, BatchSoFar>, id: string): SplitBatch | null {
  const batch = plan.batches.find((entry) => entry.id === id)
  if (!batch) return null
  const filled = factOf.get(id)?.jarsFilled ?? null
  const { preparationId, multiple } = batch
  return { id, preparationId, multiple, jars: filled === null ? batch.jars : exactly(filled) }
}

/** Jars that wait beyond what the plan's loads take, such as those of a load that was given up: loads with the next free codes. */
function newLoads(
  problem: DayProblem,
  plan: DayPlan,
  soFar: DaySoFar,
  factOf: ReadonlyMap<string, BatchSoFar>,
  jarsLeft: ReadonlyMap<string, number>,
): JobLeft[] {
  const codes = [...plan.loads.map(({ code }) => code), ...soFar.loads.map(({ loadId }) => loadId)]
  let last = Math.max(0, ...codes.map((code) => Number(code.slice(1)) || 0))
  return [...jarsLeft].flatMap(([batchId, jars]) => {
    const batch = splitBatch(plan, factOf, batchId)
    const preparation = problem.preparations.find(({ id }) => id === batch?.preparationId)
    if (jars <= 0 || !batch || !preparation) return []
    const sizes = cannersFor(problem, preparation).map((canner) => canner.capacity[preparation.jarSize] ?? 0)
    const most = Math.max(1, ...sizes)
    const counts = Array.from({ length: Math.ceil(jars / most) }, (_, index) => Math.min(most, jars - index * most))
    const loads = counts.map((count) => ({ parts: [{ batchId, jars: exactly(count) }] }))
    const loadCodes = counts.map(() => `L${String(++last).padStart(2, '0')}`)
    return [{ job: { preparationId: preparation.id, batches: [batch], loads }, loadCodes }]
  })
}
