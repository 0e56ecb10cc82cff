import type { ProjectSchedule } from '@/shared/scheduling/project/project'
import { type Random, randomFrom, wholeBelow } from '@/shared/scheduling/random'
import { copyLines, emptyLines, type Lines, putIn, reckon, scheduleOf, setLines, setMode, takeOut } from '@/shared/scheduling/shop/lines'
import { criticalPath, type Move, movesAlong } from '@/shared/scheduling/shop/moves'
import type { Shop } from '@/shared/scheduling/shop/shop'

/**
 * A search that always makes the best move that it has not just undone. Deterministic for a seed and a number of steps; `best` never gets worse.
 *
 * Source: Nowicki, Smutnicki 1996, A fast taboo search algorithm for the job shop problem, Management Science 42:797-813.
 */
export type ShopSearch = {
  readonly shop: Shop
  readonly random: Random
  readonly lines: Lines
  readonly bestLines: Lines
  /** Good lines found lately, to set out from again. */
  readonly elite: Lines[]
  /** By pair of tasks: until which step the first may not be put before the second. */
  readonly orderBarred: Int32Array
  /** By task and machine: until which step it may not go back there. */
  readonly machineBarred: Int32Array
  best: ProjectSchedule
  /** The best since the search last set out. */
  near: number
  sinceBetter: number
  steps: number
}

/** Starts from a schedule that is known. */
export function startShopSearch(shop: Shop, from: ProjectSchedule, seed: number): ShopSearch {
  const lines = emptyLines(shop)
  setLines(lines, from)
  const bestLines = emptyLines(shop)
  copyLines(lines, bestLines)
  return {
    ...{
      shop,
      random: randomFrom(seed),
      lines,
      bestLines,
      elite: [],
      best: scheduleOf(lines),
      near: lines.makespan,
      sinceBetter: 0,
      steps: 0,
    },
    ...{ orderBarred: new Int32Array(shop.count * shop.count), machineBarred: new Int32Array(shop.count * (shop.machines + 1)) },
  }
}

/** Goes on from a schedule that somebody else found. */
export function followSchedule(search: ShopSearch, found: ProjectSchedule): void {
  setLines(search.lines, found)
  search.near = search.lines.makespan
  search.sinceBetter = 0
  noteBest(search)
}

/** Makes a number of moves. */
export function improveShop(search: ShopSearch, steps: number): void {
  for (let step = 0; step < steps; step++) moveOnce(search)
}

/** Steps without a better schedule after which the search sets out anew. */
const patience = ({ shop }: ShopSearch): number => 5_000 + 20 * shop.count

function moveOnce(search: ShopSearch): void {
  const { lines, random } = search
  search.steps++
  const move = chooseMove(search)
  if (!move || !perform(search, move)) {
    setOut(search)
    return
  }
  if (lines.makespan < search.near) {
    search.near = lines.makespan
    search.sinceBetter = 0
    noteBest(search)
  } else if (++search.sinceBetter > patience(search)) setOut(search)
  else if (random() < 0.0005) search.orderBarred.fill(0)
}

function noteBest(search: ShopSearch): void {
  if (search.lines.makespan >= search.best.makespan) return
  copyLines(search.lines, search.bestLines)
  search.best = scheduleOf(search.lines)
}

/** The move that promises most of those that are not barred, or that would be the best ever; of equals any. When all are barred, any. */
function chooseMove(search: ShopSearch): Move | null {
  const { lines, random } = search
  const path = criticalPath(lines, (count) => (count > 1 ? wholeBelow(random, count) : 0))
  let [best, ties, any, seen]: [Move | null, number, Move | null, number] = [null, 0, null, 0]
  movesAlong(lines, path, (move) => {
    seen++
    if (random() * seen < 1) any = move
    if (best && move.estimate > best.estimate) return
    if (move.estimate >= search.best.makespan && isBarred(search, move)) return
    ties = best && move.estimate === best.estimate ? ties + 1 : 1
    if (ties === 1 || random() * ties < 1) best = move
  })
  return best ?? any
}

function isBarred({ lines, shop, orderBarred, machineBarred, steps }: ShopSearch, move: Move): boolean {
  const { task } = move
  const machine = shop.modes[task]?.[move.mode]?.machine ?? -1
  if (machine !== lines.machine[task]) return (machineBarred[task * (shop.machines + 1) + machine + 1] ?? 0) > steps
  let barred = false
  passedBy(lines, move, (first, second) => {
    if ((orderBarred[first * shop.count + second] ?? 0) > steps) barred = true
  })
  return barred
}

/** The pairs that a move within a line turns round, as they stand after it. */
function passedBy({ next, previous, head }: Lines, { task, before, last }: Move, each: (first: number, second: number) => void): void {
  const isLater = before < 0 ? true : (head[before] ?? 0) > (head[task] ?? 0)
  if (isLater) {
    const end = before < 0 ? last : (previous[before] ?? -1)
    for (let other = next[task] ?? -1; other >= 0; other = next[other] ?? -1) {
      each(other, task)
      if (other === end) break
    }
  } else {
    for (let other = previous[task] ?? -1; other >= 0; other = previous[other] ?? -1) {
      each(task, other)
      if (other === before) break
    }
  }
}

/** Makes a move and bars the way back; false when it closed a circle. */
function perform(search: ShopSearch, move: Move): boolean {
  const { lines, shop, random, orderBarred, machineBarred, steps } = search
  const { task } = move
  const usual = 10 + shop.count / Math.max(1, shop.machines) ** 2
  const until = steps + Math.floor(usual * (1 + random() * 0.6))
  const machine = shop.modes[task]?.[move.mode]?.machine ?? -1
  if (machine === lines.machine[task]) {
    passedBy(lines, move, (first, second) => {
      orderBarred[second * shop.count + first] = until
    })
  } else machineBarred[task * (shop.machines + 1) + (lines.machine[task] ?? -1) + 1] = until
  const last = move.last === task ? (lines.previous[task] ?? -1) : move.last
  const before = move.before === task ? (lines.next[task] ?? -1) : move.before
  takeOut(lines, task)
  setMode(lines, task, move.mode)
  putIn(lines, task, last, before)
  return reckon(lines)
}

/** From the best, or one of the good ones, with some moves at random. */
function setOut(search: ShopSearch): void {
  const { lines, random, elite, bestLines } = search
  if (search.near <= search.best.makespan * 1.02) keepElite(search)
  const from = elite.length > 0 && random() < 0.5 ? (elite[wholeBelow(random, elite.length)] ?? bestLines) : bestLines
  copyLines(from, lines)
  search.orderBarred.fill(0)
  search.machineBarred.fill(0)
  search.sinceBetter = 0
  const shakes = 3 + wholeBelow(random, 4 + Math.floor(search.shop.count / 8))
  for (let shake = 0; shake < shakes; shake++) {
    const path = criticalPath(lines, (count) => (count > 1 ? wholeBelow(random, count) : 0))
    let [any, seen]: [Move | null, number] = [null, 0]
    movesAlong(lines, path, (move) => {
      seen++
      if (random() * seen < 1) any = move
    })
    if (any && !perform(search, any)) copyLines(from, lines)
  }
  search.near = lines.makespan
}

const MOST_ELITE = 8

function keepElite({ elite, lines, shop, random }: ShopSearch): void {
  const kept = elite.length < MOST_ELITE ? emptyLines(shop) : elite[wholeBelow(random, elite.length)]
  if (!kept) return
  if (elite.length < MOST_ELITE) elite.push(kept)
  copyLines(lines, kept)
}
