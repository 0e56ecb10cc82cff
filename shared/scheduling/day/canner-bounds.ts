import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import { byKinds } from '@/shared/scheduling/day/canner-kinds-bound'
import { type Bound, leastEnd, type Part } from '@/shared/scheduling/energy-bound'
import { loadShares, wholeLoads, worth } from '@/shared/scheduling/day/load-shares'
import { headsOf, leastPrepWork } from '@/shared/scheduling/day/stage-heads'

/** What canners and their operators say about the end, for boiling water and for pressure. */
export function cannerBounds(model: DayModel): Bound[] {
  return [false, true].flatMap((isPressure) => {
    const batches = model.batches.filter((batch) => model.families[batch.family]?.isPressure === isPressure)
    if (batches.length === 0) return []
    const name = isPressure ? 'pressure canners' : 'boiling-water canners'
    const bounds = [byWork(model, batches, isPressure, name), ...bySupply(model, batches, isPressure, name)]
    if (isPressure) bounds.push(byOperators(model, batches))
    const most = Math.max(...bounds.map(({ slot }) => slot))
    return [...bounds, byKinds(model, batches, isPressure, usableSlots(model, isPressure), most, name)]
  })
}

/** Canner work in slots of the family's largest canner. */
function workOf(model: DayModel, batches: readonly ModelBatch[]): number[] {
  const shares = loadShares(model)
  return batches.map((batch) => (shares[batch.index] ?? 0) * batch.tail)
}

/**
 * For every head, the loads of batches that come no sooner: each family's rounded up to what canners can hold together, against the time
 * that canners can fill with whole loads between the head and the end.
 */
function byWork(model: DayModel, batches: readonly ModelBatch[], isPressure: boolean, name: string): Bound {
  const shares = loadShares(model)
  const count = worth(model, isPressure)
  const usable = usableSlots(model, isPressure)
  const heads = batches.map((batch) => headsOf(batch).load)
  let slot = 0
  for (const head of new Set(heads)) {
    const loads = new Map<number, number>()
    for (const [at, batch] of batches.entries())
      if ((heads[at] ?? 0) >= head) loads.set(batch.family, (loads.get(batch.family) ?? 0) + (shares[batch.index] ?? 0))
    const work = [...loads].reduce(
      (sum, [family, share]) => sum + wholeLoads(model, family, share) * (model.families[family]?.whole ?? 0),
      0,
    )
    while (slot <= model.slots && count * (usable[Math.max(0, slot - head)] ?? 0) < work - 1e-6) slot++
  }
  return { slot, because: name }
}

/** By length of time: the most slots of it that loads of the method's families, one after another, can fill. */
function usableSlots(model: DayModel, isPressure: boolean): number[] {
  const lengths = [...new Set(model.families.filter((family) => family.isPressure === isPressure).map((family) => family.whole))]
  const most = [0]
  for (let slots = 1; slots <= model.slots + 1; slots++) {
    const filled = lengths.map((length) => (length > 0 && length <= slots ? length + (most[slots - length] ?? 0) : 0))
    most.push(Math.max(most[slots - 1] ?? 0, ...filled))
  }
  return most
}

function byOperators(model: DayModel, batches: readonly ModelBatch[]): Bound {
  const work = workOf(model, batches)
  const parts = batches.map((batch, index): Part => ({ head: headsOf(batch).load, tail: 0, work: work[index] ?? 0 }))
  const capacity = (from: number, to: number) =>
    model.operators.reduce((sum, one) => sum + one.most * Math.max(0, Math.min(to, one.to) - Math.max(from, one.from)), 0)
  return { slot: leastEnd(parts, capacity, model.slots), because: 'operators of pressure canners' }
}

/** What a batch uses of something it passes before the canner, and how much of that there is by each slot. */
type Supply = { readonly name: string; readonly use: (batch: ModelBatch) => number; readonly by: (slot: number) => number }

/**
 * For every slot t: canner work that is not yet filled by t must begin at t or later, so the end is at least t and what is left over the
 * canners. What can be filled by t is bounded by each thing that batches pass before: the most canner work for its use, parts of batches
 * allowed.
 */
function bySupply(model: DayModel, batches: readonly ModelBatch[], isPressure: boolean, name: string): Bound[] {
  const work = workOf(model, batches)
  const total = work.reduce((sum, one) => sum + one, 0)
  const count = worth(model, isPressure)
  return suppliesOf(model, batches).map((supply) => {
    const order = batches.map((batch, index) => ({ batch, work: work[index] ?? 0, use: supply.use(batch), head: headsOf(batch).load }))
    order.sort((a, b) => Number(a.use > 0) - Number(b.use > 0) || b.work / Math.max(1e-9, b.use) - a.work / Math.max(1e-9, a.use))
    let slot = 0
    for (let at = 0; at <= model.slots; at++) {
      let left = supply.by(at)
      let filled = 0
      for (const one of order) {
        if (one.head > at) continue
        // those that use nothing come first, and are there whatever is left
        if (left <= 0 && one.use > 0) break
        const part = one.use <= 0 ? 1 : Math.min(1, left / one.use)
        filled += one.work * part
        left -= one.use * part
      }
      if (total - filled > 1e-6) slot = Math.max(slot, at + 1 + Math.ceil((total - filled) / count - 1e-6))
    }
    return { slot, because: `${name} fed by ${supply.name}` }
  })
}

function suppliesOf(model: DayModel, batches: readonly ModelBatch[]): Supply[] {
  const { day } = model
  const least = (value: (batch: ModelBatch) => number) => Math.min(...batches.map(value))
  const cookHead = least((batch) => headsOf(batch).cook)
  const fillHead = least((batch) => headsOf(batch).fill)
  const ready = least((batch) => batch.ready)
  const afterPrep = least((batch) => batch.cook + batch.fill)
  const from = (count: number, head: number) => (slot: number) => count * Math.max(0, slot - head)
  return [
    { name: 'fill stations', use: (batch) => batch.fill, by: from(day.fillStations, fillHead) },
    { name: 'stove watch', use: (batch) => batch.cook + batch.fill, by: from(Math.min(day.stoveWatch, day.burners), cookHead) },
    { name: 'prep places', use: leastPrepWork, by: (slot) => day.prepPlaces * Math.max(0, slot - afterPrep - ready) },
  ]
}
