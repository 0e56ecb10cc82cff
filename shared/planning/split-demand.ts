import type { DayProblem, KettleWork, PlanCanner, PlanKettle, PlanPreparation } from '@/shared/planning/day-problem'
import type { JarRange, PlanLimit } from '@/shared/planning/day-plan'
import { ok, type Result, refuse } from '@/shared/result/result'

/** A kettle batch before it has a time. */
export type SplitBatch = {
  readonly id: string
  readonly preparationId: string
  /** Tested batches in one kettle; always 1 under 'whole-batches-only'. */
  readonly multiple: number
  readonly jars: JarRange
}

/** Batches that share one load, or one batch that needs several: they meet at the canner together. */
export type SplitJob = {
  readonly preparationId: string
  readonly batches: readonly SplitBatch[]
  /** One entry a canner load; its parts name jars of each batch. */
  readonly loads: readonly { readonly parts: readonly { readonly batchId: string; readonly jars: JarRange }[] }[]
}

export type Split = { readonly jobs: readonly SplitJob[] }

/** A demand that no kettle or canner of this kitchen can take, with both figures in the limit's unit. */
export type SplitProblem = { readonly limit: PlanLimit; readonly needed: number; readonly available: number }

/** Jars to plan for: those wanted and the spare, rounded up to whole jars. */
export function jarsToPlan(preparation: Pick<KettleWork, 'spare' | 'jarsWanted'>): number {
  const { spare, jarsWanted } = preparation
  return jarsWanted + (spare.kind === 'jars' ? spare.jars : Math.ceil(jarsWanted * spare.share - 1e-9))
}

/**
 * Divides what is wanted into kettle batches and canner loads.
 *
 * Batches: enough tested batches, at their typical yield, for the jars wanted and the spare. Jam and jelly are one tested batch to
 * a kettle, always; other food fills the largest kettle that serves it with whole multiples, evenly spread over the kettles filled.
 * Loads: a batch goes whole into one load where its highest yield fits; several whole batches share a load where they fit together,
 * canners of different sizes getting loads in turn;
 * a batch larger than a canner is divided over the fewest loads. Loads never mix preparations.
 *
 * @returns jobs in the order of the preparations given; a preparation with no jars wanted gives none
 */
export function splitDemand(problem: DayProblem): Result<Split, SplitProblem> {
  const jobs: SplitJob[] = []
  for (const preparation of problem.preparations) {
    if (jarsToPlan(preparation) <= 0) continue
    const split = splitPreparation(problem, preparation)
    if (!split.ok) return split
    jobs.push(...split.value)
  }
  return ok({ jobs })
}

/** Kettles that may cook this preparation, whatever their volume. */
export const kettlesFor = (problem: DayProblem, preparation: Pick<KettleWork, 'kettleUse'>): readonly PlanKettle[] =>
  problem.kettles.filter((kettle) => kettle.use === 'any' || kettle.use === preparation.kettleUse)

/** May this preparation go into that canner, apart from how many jars it holds? */
export const mayGoInto = (preparation: PlanPreparation, canner: PlanCanner): boolean =>
  canner.method === preparation.method && (preparation.onlyCannerIds?.includes(canner.id) ?? true)

/** Usable canners that the preparation may go into and that hold at least `jars` of its jar size. */
export const cannersFor = (problem: DayProblem, preparation: PlanPreparation, jars = 1): readonly PlanCanner[] =>
  problem.canners.filter((canner) => canner.usable && mayGoInto(preparation, canner) && (canner.capacity[preparation.jarSize] ?? 0) >= jars)

function splitPreparation(problem: DayProblem, preparation: PlanPreparation): Result<SplitJob[], SplitProblem> {
  const batches = splitIntoBatches(problem, preparation)
  if (!batches.ok) return batches
  const capacities = loadSizes(problem, preparation)
  if (!capacities.ok) return capacities
  return ok(gatherLoads(preparation, batches.value, capacities.value))
}

/** The kettle batches that give the jars wanted and the spare, the largest first; refused when no kettle holds one tested batch. */
export function splitIntoBatches(problem: DayProblem, work: KettleWork): Result<SplitBatch[], SplitProblem> {
  const litres = Math.max(0, ...kettlesFor(problem, work).map((kettle) => kettle.litres))
  if (litres < work.batchLitres) {
    const limit: PlanLimit = { kind: 'kettle-too-small', preparationId: work.id }
    return refuse({ limit, needed: work.batchLitres, available: litres })
  }
  return ok(kettleBatches(work, work.scaling === 'whole-batches-only' ? 1 : wholeMultiple(litres, work.batchLitres)))
}

const wholeMultiple = (litres: number, batchLitres: number) => Math.max(1, Math.floor(litres / batchLitres + 1e-9))

/** Jars each usable canner of the method takes in this size, the largest first. */
function loadSizes(problem: DayProblem, preparation: PlanPreparation): Result<number[], SplitProblem> {
  const ofMethod = problem.canners.filter((canner) => mayGoInto(preparation, canner))
  const usable = ofMethod.filter((canner) => canner.usable)
  if (usable.length === 0) {
    const whyNot = ofMethod.flatMap((canner) => (canner.whyNot ? [`${canner.label}: ${canner.whyNot}`] : []))
    const limit: PlanLimit = { kind: 'no-canner-for-method', method: preparation.method, preparationId: preparation.id, whyNot }
    return refuse({ limit, needed: 1, available: 0 })
  }
  const capacities = usable.map((canner) => canner.capacity[preparation.jarSize] ?? 0).filter((jars) => jars > 0)
  if (capacities.length > 0) return ok(capacities.sort((a, b) => b - a))
  const limit: PlanLimit = { kind: 'canner-too-small', jarSize: preparation.jarSize, preparationId: preparation.id }
  return refuse({ limit, needed: 1, available: 0 })
}

function kettleBatches(preparation: KettleWork, mostMultiple: number): SplitBatch[] {
  const tested = Math.ceil(jarsToPlan(preparation) / preparation.batchYield.typical - 1e-9)
  const kettlefuls = Math.ceil(tested / mostMultiple)
  return Array.from({ length: kettlefuls }, (_, index) => {
    const multiple = Math.floor((tested + index) / kettlefuls)
    const { low, typical, high } = preparation.batchYield
    const jars = { low: low * multiple, typical: typical * multiple, high: high * multiple }
    return { id: `${preparation.id}/${index + 1}`, preparationId: preparation.id, multiple, jars }
  }).sort((a, b) => b.multiple - a.multiple || 0)
}

/** Fills loads for the canners in turn, the largest first, so that small canners get loads too; canners under one batch take none. */
function gatherLoads(preparation: PlanPreparation, batches: readonly SplitBatch[], capacities: readonly number[]): SplitJob[] {
  const jobs: SplitJob[] = []
  const largest = capacities[0] ?? 0
  let open: SplitBatch[] = []
  const close = () => {
    if (open.length > 0) jobs.push(sharedLoad(preparation, open))
    open = []
  }
  for (const batch of batches) {
    const holding = capacities.filter((jars) => jars >= batch.jars.high)
    const room = holding[jobs.length % Math.max(1, holding.length)] ?? largest
    const inOpen = open.reduce((sum, other) => sum + other.jars.high, 0)
    if (inOpen + batch.jars.high > room) close()
    if (batch.jars.high > largest) jobs.push(dividedBatch(preparation, batch, largest))
    else open.push(batch)
  }
  close()
  return jobs
}

const sharedLoad = (preparation: PlanPreparation, batches: readonly SplitBatch[]): SplitJob => ({
  preparationId: preparation.id,
  batches,
  loads: [{ parts: batches.map((batch) => ({ batchId: batch.id, jars: batch.jars })) }],
})

function dividedBatch(preparation: PlanPreparation, batch: SplitBatch, capacity: number): SplitJob {
  const count = Math.ceil(batch.jars.high / capacity)
  const share = (jars: number, index: number) => Math.max(0, Math.min(capacity, jars - index * capacity))
  const loads = Array.from({ length: count }, (_, index) => ({
    parts: [
      {
        batchId: batch.id,
        jars: { low: share(batch.jars.low, index), typical: share(batch.jars.typical, index), high: share(batch.jars.high, index) },
      },
    ],
  }))
  return { preparationId: preparation.id, batches: [batch], loads }
}
