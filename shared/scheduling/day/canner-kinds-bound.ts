import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import { dualFeasible, largestLoad, partOfLoad } from '@/shared/scheduling/day/load-shares'
import { headsOf } from '@/shared/scheduling/day/stage-heads'
import type { Bound } from '@/shared/scheduling/energy-bound'

/**
 * What large and small canners of one method say about the end, each in whole loads.
 *
 * Proof: take a head and an end. A plan that ends by then has so many loads of each family in small canners, for all of which the small canners
 * have time, and at least so many in large ones as are then left (`largeLoads`). Where for no such numbers the large canners have time for
 * these, no plan ends by then.
 *
 * @param usable - by length of time: the most slots of it that loads of the method, one after another, can fill
 * @param from - a slot that is known to be no later than the earliest end
 */
export function byKinds(
  model: DayModel,
  batches: readonly ModelBatch[],
  isPressure: boolean,
  usable: readonly number[],
  from: number,
  name: string,
): Bound {
  let slot = from
  const kinds = batches.length > MOST_BATCHES ? [] : kindsOf(model, isPressure)
  for (let first = 1; first <= kinds.length; first++) {
    const [large, small] = [kinds.slice(0, first), kinds.slice(first)]
    if (!isOrdered(model, isPressure, large, small)) continue
    for (const head of new Set(batches.map((batch) => headsOf(batch).load))) {
      const own = batches.filter((batch) => headsOf(batch).load >= head)
      const choices = choicesOf(model, own, large, small)
      const fits = (end: number) => {
        const time = usable[Math.max(0, end - head)] ?? 0
        const [smallTime, largeTime] = [small, large].map((these) => time * cannerCount(model, these)) as [number, number]
        return leastLarge(choices, Math.floor(smallTime)) <= largeTime
      }
      while (slot <= model.slots && !fits(slot)) slot++
    }
  }
  return { slot, because: name }
}

/** Beyond so many batches whole loads of many canners come out as parts of them do, and this would take longer than a first plan. */
const MOST_BATCHES = 100

/** Kinds of canner that take some family of the method, those that hold most first. */
export function kindsOf(model: DayModel, isPressure: boolean): number[] {
  const holds = (kind: number) =>
    Math.max(0, ...model.families.map((family) => (family.isPressure === isPressure ? (family.capacity[kind] ?? 0) : 0)))
  const kinds = model.cannerKinds.map((_, kind) => kind).filter((kind) => holds(kind) > 0)
  return kinds.sort((a, b) => holds(b) - holds(a))
}

/** True when no small canner holds more of anything than a large one does. */
export const isOrdered = (model: DayModel, isPressure: boolean, large: readonly number[], small: readonly number[]): boolean =>
  model.families.every(
    ({ capacity, isPressure: own }) =>
      own !== isPressure || large.every((one) => small.every((other) => (capacity[one] ?? 0) >= (capacity[other] ?? 0))),
  )

export const cannerCount = (model: DayModel, kinds: readonly number[]): number =>
  kinds.reduce((sum, kind) => sum + (model.cannerKinds[kind]?.ids.length ?? 0), 0)

/** Slots of a load of a family, and by number of its loads in small canners the fewest in large ones. */
type Choice = { readonly whole: number; readonly largeLoads: readonly number[] }

function choicesOf(model: DayModel, batches: readonly ModelBatch[], large: readonly number[], small: readonly number[]): Choice[] {
  return model.families.flatMap((family, index) => {
    const own = batches.filter((batch) => batch.family === index)
    return own.length === 0 ? [] : [{ whole: family.whole, largeLoads: largeLoads(model, own, large, small) }]
  })
}

/**
 * The fewest loads in large canners for 0, 1, 2 … loads of the family in small ones, up to where more changes nothing. The most of:
 *
 * - what is left by jars or through the dual feasible function, whatever a small load can take at most taken off for each;
 * - by jars again, where of each batch only so much can be in small canners as they hold at once (`inSmall`);
 * - batches that cannot be in small canners whole, by how many can be in one load (`batchesAtOnce`).
 */
function largeLoads(model: DayModel, own: readonly ModelBatch[], large: readonly number[], small: readonly number[]): number[] {
  const family = own[0]?.family ?? 0
  const capacity = model.families[family]?.capacity ?? []
  const most = (kinds: readonly number[]) => Math.max(0, ...kinds.map((kind) => capacity[kind] ?? 0))
  const [largest, smallest] = [most(large), most(small)]
  if (largest === 0) return [0]
  const whole = largestLoad(model, family)
  const trays = own.flatMap((batch) => batch.trays)
  const jars = trays.reduce((sum, tray) => sum + tray, 0)
  const share = trays.reduce((sum, tray) => sum + dualFeasible(tray / whole), 0)
  const left = own.map((batch) => batch.jars - inSmall(model, batch, small)).filter((rest) => rest > 0)
  const byBatch = Math.max(left.reduce((sum, rest) => sum + rest, 0) / largest, left.length / batchesAtOnce(model, own))
  const by = (count: number) =>
    Math.max(
      0,
      byBatch,
      (jars - count * smallest) / largest,
      (share - count * partOfLoad(model, family, smallest)) / partOfLoad(model, family, largest),
    )
  const loads = [up(by(0))]
  while (smallest > 0 && loads.length <= trays.length && (loads.at(-1) ?? 0) > up(byBatch)) loads.push(up(by(loads.length)))
  return loads
}

const up = (loads: number): number => Math.ceil(loads - 1e-6)

/**
 * The most jars of a batch that can be in small canners. All its loads begin within the longest wait after filling; where a load is longer
 * than that, no canner has two of them, so there is at most one load for each small canner.
 */
export function inSmall(model: DayModel, batch: ModelBatch, small: readonly number[]): number {
  const holds = Math.max(0, ...small.map((kind) => model.families[batch.family]?.capacity[kind] ?? 0))
  const fitting = batch.trays.filter((tray) => tray <= holds)
  const jars = fitting.reduce((sum, tray) => sum + tray, 0)
  if (batch.waitFillLoad >= batch.tail) return jars
  return Math.min(jars, cannerCount(model, small) * mostWithin(fitting, holds))
}

/** The most that some of the sizes sum to without being more than a limit. */
function mostWithin(sizes: readonly number[], limit: number): number {
  const sums = new Set([0])
  for (const size of sizes) for (const sum of [...sums]) if (sum + size <= limit) sums.add(sum + size)
  return Math.max(...sums)
}

/**
 * The most batches that can be in one load. They are filled within the longest wait before it begins, and at each station one follows the
 * other by a whole filling at least.
 */
export function batchesAtOnce(model: DayModel, own: readonly ModelBatch[]): number {
  const wait = Math.max(...own.map((batch) => batch.waitFillLoad))
  const fill = Math.min(...own.map((batch) => batch.fill))
  return fill > 0 ? model.day.fillStations * (1 + Math.floor(wait / fill)) : Number.POSITIVE_INFINITY
}

/** The fewest slots of large canners that all families need when the small ones have so many slots. */
function leastLarge(choices: readonly Choice[], smallTime: number): number {
  let least = new Float64Array(smallTime + 1)
  for (const { whole, largeLoads: loads } of choices) {
    const next = new Float64Array(smallTime + 1).fill(Number.POSITIVE_INFINITY)
    for (const [count, large] of loads.entries()) {
      const taken = count * whole
      if (count > 0 && large === loads[count - 1]) continue
      for (let time = taken; time <= smallTime; time++) next[time] = Math.min(next[time] ?? 0, (least[time - taken] ?? 0) + large * whole)
    }
    least = next
  }
  return least[smallTime] ?? 0
}
