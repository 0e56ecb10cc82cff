import type { DayModel } from '@/shared/scheduling/day/day-model'
import {
  breakSpan,
  type DayState,
  emptyState,
  endOf,
  heldUntil,
  leastFree,
  moveBreak,
  type Placement,
  removeBatch,
  settle,
  takeBack,
} from '@/shared/scheduling/day/day-state'
import { insertBatch, type Manner } from '@/shared/scheduling/day/insert-batch'
import { type Random, randomFrom, shuffle, wholeBelow } from '@/shared/scheduling/random'

/** A whole timetable that stands on its own, in slots. */
export type DaySolution = { readonly placements: readonly Placement[]; readonly breakStarts: readonly number[]; readonly finish: number }

/**
 * A search for ever earlier finishes. Deterministic for a seed and a number of steps; `best` never gets worse.
 *
 * Every batch is in the kitchen or on the waiting list, and nothing ends after `limit`. When the list is empty a better timetable is found
 * and the limit goes down.
 */
export type DaySearch = {
  state: DayState
  readonly random: Random
  /** How often each batch was left waiting; the more often, the more it weighs. */
  readonly weights: Float64Array
  readonly waiting: number[]
  /** Orders by rules of thumb that were not tried yet. */
  readonly untried: number[][]
  limit: number
  best: DaySolution | null
  /** No timetable ends before this slot. */
  readonly bound: number
  steps: number
}

/** Days of so many batches wait for no second rule of thumb before they show a plan; those of more than the second number try none. */
const MANY_BATCHES = { first: 60, only: 400 } as const

/** Starts a search with the timetables of rules of thumb, of a large day with that of the first: the others are then its first steps. */
export function startSearch(model: DayModel, bound: number, seed: number): DaySearch {
  const untried = firstOrders(model)
  const search: DaySearch = {
    ...{ state: emptyState(model), random: randomFrom(seed), weights: new Float64Array(model.batches.length).fill(1) },
    ...{ waiting: [], untried, limit: model.slots, best: null, bound, steps: 0 },
  }
  fillInOrder(search, untried.shift() ?? [])
  noteIfWhole(search)
  if (model.batches.length > MANY_BATCHES.only && search.best) untried.length = 0
  while (untried.length > 0 && (model.batches.length <= MANY_BATCHES.first || !search.best)) tryOrder(search, untried.shift() ?? [])
  return search
}

/** Puts every batch into an empty kitchen in this order; what fits nowhere waits. */
function fillInOrder(search: DaySearch, order: readonly number[]): void {
  for (const index of order) if (!insertBatch(search.state, index, plain(search))) search.waiting.push(index)
  settle(search.state)
}

/** Goes on from the timetable of another rule of thumb if that is better. */
function tryOrder(search: DaySearch, order: readonly number[]): void {
  const { model } = search.state
  const other: DaySearch = { ...search, state: emptyState(model), waiting: [], limit: model.slots }
  fillInOrder(other, order)
  const isWhole = other.waiting.length === 0
  if (search.best ? !isWhole || finishOf(other.state) > search.limit : !isBetterStart(other, search)) return
  search.state = other.state
  search.waiting.splice(0, search.waiting.length, ...other.waiting)
  removeLate(search)
  noteIfWhole(search)
}

/** True while a better timetable may exist. */
export const mayImprove = (search: DaySearch): boolean => search.best === null || search.best.finish > search.bound

/** Does a number of steps of the search; each takes some batches out and puts them back otherwise. */
export function improve(search: DaySearch, steps: number): void {
  for (let step = 0; step < steps && mayImprove(search); step++) {
    const order = search.untried.shift()
    if (order) tryOrder(search, order)
    else improveOnce(search)
  }
}

function firstOrders(model: DayModel): number[][] {
  const all = model.batches.map((_, index) => index)
  const of = (value: (index: number) => number) => [...all].sort((a, b) => value(a) - value(b) || a - b)
  const batch = (index: number) => model.batches[index]
  const after = (index: number) => (batch(index)?.tail ?? 0) + (batch(index)?.fill ?? 0)
  return [
    of((index) => (batch(index)?.ready ?? 0) - after(index)),
    of((index) => -after(index) * 1_000 + (batch(index)?.family ?? 0)),
    of((index) => (batch(index)?.ready ?? 0) * 100 - (batch(index)?.jars ?? 0)),
    of((index) => (batch(index)?.ready ?? 0) + ((index * 7_919) % 97) / 97 - after(index) / 4),
  ]
}

const isBetterStart = (a: DaySearch, b: DaySearch) =>
  a.waiting.length - b.waiting.length < 0 || (a.waiting.length === b.waiting.length && finishOf(a.state) < finishOf(b.state))

const plain = (search: DaySearch): Manner => ({
  limit: search.limit,
  fromEnd: false,
  blink: 0,
  joinFirst: false,
  prepLate: false,
  isStray: false,
  crewsWith: search.state.model.crewsWith,
  random: search.random,
})

const finishOf = (state: DayState): number =>
  state.placements.reduce((latest, placement, index) => (placement ? Math.max(latest, endOf(state, index)) : latest), 0)

/** Keeps the timetable when nobody waits, lowers the limit, and puts on the waiting list what now ends too late. */
function noteIfWhole(search: DaySearch): void {
  const { state } = search
  while (search.waiting.length === 0) {
    const finish = finishOf(state)
    const placements = state.placements.map((placement) => placement as Placement)
    search.best = { placements, breakStarts: [...state.breakStarts], finish }
    if (finish <= search.bound) return
    search.limit = finish - 1
    removeLate(search)
  }
}

/** From now on only what ends by this slot is of use: somebody knows a timetable that ends right after it. */
export function lowerLimit(search: DaySearch, limit: number): void {
  if (limit >= search.limit) return
  search.limit = limit
  removeLate(search)
  if (search.waiting.length === 0) noteIfWhole(search)
}

/** Puts on the waiting list what ends after the limit. */
function removeLate(search: DaySearch): void {
  const { state } = search
  state.placements.forEach((placement, index) => {
    if (!placement || endOf(state, index) <= search.limit) return
    removeBatch(state, index)
    search.waiting.push(index)
  })
  settle(state)
}

const costOf = (search: DaySearch): number => search.waiting.reduce((sum, index) => sum + (search.weights[index] ?? 1), 0)

function improveOnce(search: DaySearch): void {
  const { state, random } = search
  search.steps++
  const before = { waiting: [...search.waiting], cost: costOf(search), slots: state.cannerSlots }
  if (random() < 0.04) tryBreak(search)
  else for (const index of chooseOut(search)) takeOut(search, index)
  putBack(search)
  const after = costOf(search)
  const worse = after - before.cost + (state.cannerSlots - before.slots) * 1e-3 * random()
  if (worse > 0 && worse > -Math.log(1 - random()) * 0.15) {
    takeBack(state, 0)
    search.waiting.splice(0, search.waiting.length, ...before.waiting)
  } else settle(state)
  for (const index of search.waiting) search.weights[index] = (search.weights[index] ?? 1) + 0.05
  if (search.waiting.length === 0) noteIfWhole(search)
}

function takeOut(search: DaySearch, index: number): void {
  if (!search.state.placements[index]) return
  removeBatch(search.state, index)
  search.waiting.push(index)
}

/** While there is no plan, the share of steps that put back in an unusual manner: slow, but a tight day may have no other plan. */
const STRAY_SHARE = 0.2

/** Puts waiting batches back, in one of several orders and manners; who fits nowhere waits on. */
function putBack(search: DaySearch): void {
  const { state, random, limit } = search
  const order = orderBack(search)
  const fromEndShare = random() < 0.7 ? random() : 0
  const joinFirst = random() < 0.5
  const blink = random() < 0.5 ? 0 : random() * 0.15
  const isStray = search.best === null && random() < STRAY_SHARE
  const { crewsWith } = state.model
  const asked = isStray ? crewsWith.map((crews) => shuffle(random, [...crews])) : crewsWith
  search.waiting.length = 0
  for (const index of order) {
    const manner: Manner = {
      limit,
      fromEnd: random() < fromEndShare,
      blink,
      joinFirst,
      prepLate: random() < 0.5,
      isStray,
      crewsWith: asked,
      random,
    }
    if (!insertBatch(state, index, manner)) search.waiting.push(index)
  }
}

function orderBack({ waiting, random, weights, state }: DaySearch): number[] {
  const { batches } = state.model
  const order = shuffle(random, [...waiting])
  const pick = random()
  const weight = (index: number) => weights[index] ?? 1
  const tail = (index: number) => (batches[index]?.tail ?? 0) + (batches[index]?.fill ?? 0)
  if (pick < 0.35) return order.sort((a, b) => weight(b) - weight(a))
  if (pick < 0.55) return order.sort((a, b) => tail(b) - tail(a))
  if (pick < 0.7) return order.sort((a, b) => (batches[b]?.jars ?? 0) - (batches[a]?.jars ?? 0))
  if (pick < 0.8) return order.sort((a, b) => (batches[a]?.family ?? 0) - (batches[b]?.family ?? 0))
  return order
}

/** Batches to take out: near in time to one that waits or to a random one, of the same family, or any. */
function chooseOut(search: DaySearch): number[] {
  const { state, random, waiting } = search
  const placed = state.placements.flatMap((placement, index) => (placement ? [index] : []))
  if (placed.length === 0) return []
  const count = Math.min(
    placed.length,
    1 + wholeBelow(random, Math.min(10 + Math.floor(placed.length / 100), 2 + Math.ceil(placed.length / 3))),
  )
  const pick = random()
  if (pick < 0.15) return shuffle(random, placed).slice(0, count)
  const anchor = waiting[wholeBelow(random, Math.max(1, waiting.length))] ?? placed[0] ?? 0
  const family = state.model.batches[anchor]?.family ?? 0
  const minute = wholeBelow(random, search.limit + 1)
  const far = (index: number) => Math.abs((state.placements[index]?.fillStart ?? 0) - minute)
  const alien = (index: number) => (state.model.batches[index]?.family === family ? 0 : 1)
  if (pick < 0.45) return nearest(placed, count, (index) => far(index) + random() * 4)
  if (pick < 0.75) return nearest(placed, count, (index) => far(index) + alien(index) * 40 + random() * 6)
  if (pick < 0.9) return nearest(placed, count, (index) => far(index) + (sharesMethod(state, index, family) ? 0 : 60) + random() * 6)
  return nearest(placed, count, (index) => -looseness(state, index) + random() * 3)
}

const sharesMethod = ({ model }: DayState, index: number, family: number) =>
  model.families[model.batches[index]?.family ?? 0]?.isPressure === model.families[family]?.isPressure

/** Free places in the loads of a batch: loads worth breaking up. */
function looseness(state: DayState, index: number): number {
  const loads = state.placements[index]?.loads ?? []
  return loads.reduce(
    (sum, load) => sum + ((state.model.families[load.family]?.capacity[load.kind] ?? 0) - load.jars) / Math.max(1, load.trays),
    0,
  )
}

function nearest(indices: readonly number[], count: number, distance: (index: number) => number): number[] {
  return indices
    .map((index) => ({ index, at: distance(index) }))
    .sort((a, b) => a.at - b.at)
    .slice(0, count)
    .map(({ index }) => index)
}

/** Moves one crew's break to another start of its window, after everybody of that crew has put down what they do then. */
function tryBreak(search: DaySearch): void {
  const { state, random } = search
  const { model, width } = state
  const crews = model.crews.map((_, crew) => crew).filter((crew) => (model.crews[crew]?.breakLength ?? 0) > 0)
  const crew = crews[wholeBelow(random, Math.max(1, crews.length))]
  const one = crew === undefined ? undefined : model.crews[crew]
  if (crew === undefined || !one) return
  const start = one.breakFrom + wholeBelow(random, one.breakTo - one.breakFrom + 1)
  const end = start + one.breakLength
  state.placements.forEach((placement, index) => {
    if (placement && usesCrew(state, index, placement, crew, start, end)) takeOut(search, index)
  })
  const [was, wasUntil] = breakSpan(model, one, state.breakStarts[crew] ?? 0)
  const first = Math.max(start, one.from)
  const inHours = Array.from({ length: Math.max(0, Math.min(end, one.to, model.slots) - first) }, (_, step) => first + step)
  const isFree = inHours.every(
    (slot) => leastFree(state, crew * width, slot, slot + 1) + (slot >= was && slot < wasUntil ? one.size : 0) >= one.size,
  )
  if (isFree) moveBreak(state, crew, start)
}

function usesCrew(state: DayState, index: number, placement: Placement, crew: number, from: number, to: number): boolean {
  const { model } = state
  const overlaps = (start: number, end: number) => start < to && from < heldUntil(start, end)
  const batch = model.batches[index]
  if (placement.prepCrews.includes(crew) && overlaps(placement.prepStart, placement.prepStart + placement.prepLength)) return true
  if (batch && placement.fillCrews.includes(crew) && overlaps(placement.fillStart, placement.fillStart + batch.fill)) return true
  return placement.loads.some((load) => {
    const end = load.start + (model.families[load.family]?.whole ?? 0)
    if (load.loaders.includes(crew) && overlaps(load.start, load.start + model.handling.load)) return true
    return load.unloaders.includes(crew) && overlaps(end - model.handling.unload, end)
  })
}
