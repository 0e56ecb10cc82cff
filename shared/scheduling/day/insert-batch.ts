import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import {
  bookBatch,
  bookLoad,
  type DayState,
  hasRoom,
  heldUntil,
  isCrewOverbooked,
  leastFree,
  moveTray,
  type Placement,
  type StateLoad,
  setPlacement,
  takeBack,
} from '@/shared/scheduling/day/day-state'
import { type Random, shuffle } from '@/shared/scheduling/random'

/** How a batch is put in. */
export type Manner = {
  /** Every jar is out by this slot. */
  readonly limit: number
  /** From the latest minute backwards instead of from the earliest on. */
  readonly fromEnd: boolean
  /** Share of the minutes that are passed over, for variety; 0 tries all. */
  readonly blink: number
  /** Join loads that are there before opening new ones, even if that means waiting. */
  readonly joinFirst: boolean
  /** Prepare just before cooking instead of as soon as may be. */
  readonly prepLate: boolean
  /**
   * Try team sizes in any order, cook earlier than need be when nobody can prepare for the latest cooking, and take any canner and operator
   * that will do: seldom of use, and slow.
   */
  readonly isStray: boolean
  /** Crews with a skill, in the order in which they are asked. */
  readonly crewsWith: DayModel['crewsWith']
  readonly random: Random
}

/** Puts a batch where it first fits, or changes nothing and says false. */
export function insertBatch(state: DayState, index: number, manner: Manner): boolean {
  const batch = state.model.batches[index]
  if (!batch) return false
  state.stamp += 2
  const first = batch.ready + Math.min(...batch.teams.map((team) => batch.prepLength[team] ?? 0)) + batch.cook
  const last = manner.limit - batch.tail - batch.fill
  const most = batch.trays.length
  const fewest = manner.joinFirst ? 0 : most
  for (let opened = fewest; opened <= most; opened = opened < 2 ? opened + 1 : most) {
    if (tryMinutes(state, batch, manner, first, last, opened)) return true
    if (opened === most) return false
  }
  return false
}

function tryMinutes(state: DayState, batch: ModelBatch, manner: Manner, first: number, last: number, opened: number): boolean {
  for (let step = 0; step <= last - first; step++) {
    if (manner.blink > 0 && manner.random() < manner.blink) continue
    const fillStart = manner.fromEnd ? last - step : first + step
    if (!mayBeSeated(state, batch, fillStart + batch.fill, manner.limit, opened > 0)) continue
    if (tryFilling(state, batch, manner, fillStart, opened)) return true
  }
  return false
}

function tryFilling(state: DayState, batch: ModelBatch, manner: Manner, fillStart: number, opened: number): boolean {
  const before = baseAt(state, batch, manner, fillStart)
  if (!before) return false
  const mark = state.journal.length
  const loads = seatTrays(state, batch, manner, fillStart + batch.fill, opened)
  if (!loads) {
    takeBack(state, mark)
    return false
  }
  const { prepStart, prepLength, prepCrews, cookStart, kettleKind, fillCrews } = before
  const placement: Placement = { prepStart, prepLength, prepCrews, cookStart, kettleKind, fillStart, fillCrews, loads }
  bookBatch(state, batch.index, placement, -1)
  setPlacement(state, batch.index, placement)
  if (!state.model.hasMoments || !isCrewOverbooked(state)) return true
  takeBack(state, mark)
  return false
}

/** What comes before the canner, found once per batch and minute. */
function baseAt(state: DayState, batch: ModelBatch, manner: Manner, fillStart: number): BeforeCanner | null {
  if (state.basesKnown[fillStart] !== state.stamp) {
    state.bases[fillStart] = beforeCanner(state, batch, manner, fillStart)
    state.basesKnown[fillStart] = state.stamp
  }
  return state.bases[fillStart] ?? null
}

type BeforeCanner = Omit<Placement, 'fillStart' | 'loads'>

/** Prep, cooking and filling for a batch that is filled from this slot; null when one does not fit. */
function beforeCanner(state: DayState, batch: ModelBatch, manner: Manner, fillStart: number): BeforeCanner | null {
  const filled = fillStart + batch.fill
  if (!hasRoom(state, state.rows.stations, fillStart, filled)) return null
  let cooked = cookBefore(state, batch, fillStart, 0)
  const fillCrews = cooked && pickCrews(state, manner, batch.fillSkill, batch.fillPeople, fillStart, heldUntil(fillStart, filled))
  if (!cooked || !fillCrews) return null
  let prep = prepBefore(state, batch, manner, cooked.cookStart)
  while (!prep && manner.isStray) {
    cooked = cookBefore(state, batch, fillStart, cooked.wait + 1)
    if (!cooked) return null
    prep = prepBefore(state, batch, manner, cooked.cookStart)
  }
  if (!prep) return null
  const { prepStart, prepLength, prepCrews } = prep
  return { prepStart, prepLength, prepCrews, cookStart: cooked.cookStart, kettleKind: cooked.kettleKind, fillCrews }
}

type Cooking = { readonly wait: number; readonly cookStart: number; readonly kettleKind: number }

/** The latest cooking that ends so long before filling or longer, with a burner, a minder and a kettle until filling ends. */
function cookBefore(state: DayState, batch: ModelBatch, fillStart: number, least: number): Cooking | null {
  const { rows, width } = state
  const filled = fillStart + batch.fill
  for (let wait = least; wait <= batch.waitCookFill; wait++) {
    const cookStart = fillStart - wait - batch.cook
    if (cookStart < 0 || !hasRoom(state, rows.burners, cookStart, filled) || !hasRoom(state, rows.watch, cookStart, filled)) continue
    for (const kettleKind of batch.kettleKinds) {
      if (hasRoom(state, rows.kettles + kettleKind * width, cookStart, heldUntil(cookStart, filled + batch.turn)))
        return { wait, cookStart, kettleKind }
    }
  }
  return null
}

type Preparing = Pick<Placement, 'prepStart' | 'prepLength' | 'prepCrews'>

/** Prep that ends before cooking and not too long before, with the team that wastes least. */
function prepBefore(state: DayState, batch: ModelBatch, manner: Manner, cookStart: number): Preparing | null {
  for (const team of manner.isStray ? shuffle(manner.random, [...batch.teams]) : batch.teams) {
    const prepLength = batch.prepLength[team] ?? 0
    const held = Math.max(1, prepLength)
    const first = Math.max(batch.ready, cookStart - batch.waitPrepCook - prepLength)
    const last = cookStart - prepLength
    for (let step = 0; step <= last - first; step++) {
      const prepStart = manner.prepLate ? last - step : first + step
      if (!canPrepare(state, batch, team, prepStart, prepLength)) continue
      const prepCrews = pickCrews(state, manner, batch.prepSkill, team, prepStart, prepStart + held)
      if (prepCrews) return { prepStart, prepLength, prepCrews }
    }
  }
  return null
}

/** Looks once per batch and minute: nothing else changes while one batch seeks its place. */
function canPrepare(state: DayState, batch: ModelBatch, team: number, start: number, length: number): boolean {
  const at = team * state.width + start
  const known = state.known[at] ?? 0
  if (known >= state.stamp) return known > state.stamp
  const can =
    leastFree(state, state.rows.places, start, start + length) >= team &&
    enoughPeople(state, batch.prepSkill, team, start, start + Math.max(1, length))
  state.known[at] = can ? state.stamp + 1 : state.stamp
  return can
}

function enoughPeople(state: DayState, skill: number, people: number, from: number, to: number): boolean {
  let found = 0
  for (const crew of state.model.crewsWith[skill] ?? []) {
    found += Math.max(0, leastFree(state, crew * state.width, from, to))
    if (found >= people) return true
  }
  return false
}

/** Names a crew for each person needed; null when too few are free the whole time. */
function pickCrews(state: DayState, { crewsWith }: Manner, skill: number, people: number, from: number, to: number): number[] | null {
  const chosen: number[] = []
  for (const crew of crewsWith[skill] ?? []) {
    const free = leastFree(state, crew * state.width, from, to)
    for (let one = 0; one < free && chosen.length < people; one++) chosen.push(crew)
    if (chosen.length === people) return chosen
  }
  return people === 0 ? chosen : null
}

/** A quick look before anything is built: some load there has room, or (where that is allowed) a new one could begin in time. */
function mayBeSeated(state: DayState, batch: ModelBatch, filled: number, limit: number, mayOpen: boolean): boolean {
  const last = Math.min(filled + batch.waitFillLoad, limit - batch.tail)
  const smallest = batch.trays[batch.trayOrder.at(-1) ?? 0] ?? 0
  for (let start = filled; start <= last; start++) {
    if (mayOpen && canBegin(state, batch, start)) return true
    for (const load of state.loadsAt[batch.family * state.width + start] ?? []) if (room(state.model, load) >= smallest) return true
  }
  return false
}

/** A canner and a burner are free for a whole new load; looked at once per batch and minute. */
function canBegin(state: DayState, batch: ModelBatch, start: number): boolean {
  const known = state.known[start] ?? 0
  if (known >= state.stamp) return known > state.stamp
  const family = state.model.families[batch.family]
  const onHeat = family?.onHeat ?? 0
  const end = start + batch.tail
  const can =
    hasRoom(state, state.rows.burners, start, start + onHeat) &&
    batch.cannerKinds.some((kind) => hasRoom(state, state.rows.canners + kind * state.width, start, end)) &&
    (!family?.isPressure || operatorFor(state, null, start, end) !== null)
  state.known[start] = can ? state.stamp + 1 : state.stamp
  return can
}

const room = (model: DayModel, load: StateLoad): number => (model.families[load.family]?.capacity[load.kind] ?? 0) - load.jars

/** Gives every tray a load: the one it fills best of those that are there, else a new one; null when one finds none. */
function seatTrays(state: DayState, batch: ModelBatch, manner: Manner, filled: number, mayOpen: number): StateLoad[] | null {
  const last = Math.min(filled + batch.waitFillLoad, manner.limit - batch.tail)
  const seats = new Array<StateLoad>(batch.trays.length)
  let opened = 0
  let left = batch.jars
  for (const tray of batch.trayOrder) {
    const jars = batch.trays[tray] ?? 0
    let load = bestOpenLoad(state, batch, filled, last, jars)
    if (!load) {
      if (opened === mayOpen) return null
      load = openLoad(state, batch, manner, filled, last, jars, left)
      opened++
    }
    if (!load) return null
    moveTray(state, load, jars, 1)
    seats[tray] = load
    left -= jars
  }
  return seats
}

function bestOpenLoad(state: DayState, batch: ModelBatch, filled: number, last: number, jars: number): StateLoad | null {
  let best: StateLoad | null = null
  let least = Number.POSITIVE_INFINITY
  for (let start = filled; start <= last; start++) {
    for (const load of state.loadsAt[batch.family * state.width + start] ?? []) {
      const over = room(state.model, load) - jars
      if (over >= 0 && over < least) {
        best = load
        least = over
      }
    }
  }
  return best
}

/** Opens the soonest load that fits a canner, a burner, hands and an operator; the smallest canner that takes all that is left of the batch, else the largest. */
function openLoad(
  state: DayState,
  batch: ModelBatch,
  manner: Manner,
  filled: number,
  last: number,
  jars: number,
  left: number,
): StateLoad | null {
  const family = state.model.families[batch.family]
  if (!family) return null
  for (let step = 0; step <= last - filled; step++) {
    const start = manner.fromEnd ? last - step : filled + step
    if (!hasRoom(state, state.rows.burners, start, start + family.onHeat)) continue
    const kind = cannerFor(state, batch, start, start + family.whole, jars, left, manner)
    if (kind < 0) continue
    const load = handled(state, batch, manner, kind, start, family.whole)
    if (!load) continue
    bookLoad(state, load, -1)
    return load
  }
  return null
}

function cannerFor(state: DayState, batch: ModelBatch, start: number, end: number, jars: number, left: number, manner: Manner): number {
  const capacity = state.model.families[batch.family]?.capacity ?? []
  const { random, isStray } = manner
  const wanted = random() < 0.25 ? jars : left
  let chosen = -1
  for (const kind of batch.cannerKinds) {
    if ((capacity[kind] ?? 0) < jars) break
    if (!hasRoom(state, state.rows.canners + kind * state.width, start, heldUntil(start, end))) continue
    const isBetter = isStray ? random() < 0.5 : (capacity[kind] ?? 0) >= wanted && (capacity[kind] ?? 0) < (capacity[chosen] ?? 0)
    if (chosen < 0 || isBetter) chosen = kind
  }
  return chosen
}

/** The load with its people and its operator; null when some are not free. */
function handled(state: DayState, batch: ModelBatch, manner: Manner, kind: number, start: number, whole: number): StateLoad | null {
  const { handling } = state.model
  const end = start + whole
  const operator = state.model.families[batch.family]?.isPressure ? operatorFor(state, manner, start, end) : -1
  if (operator === null) return null
  const loaders = pickCrews(state, manner, handling.skill, handling.people, start, heldUntil(start, start + handling.load))
  const unloaders =
    loaders && pickCrews(state, manner, handling.skill, handling.people, end - handling.unload, heldUntil(end - handling.unload, end))
  return unloaders ? { family: batch.family, kind, start, operator, loaders, unloaders, jars: 0, trays: 0 } : null
}

/** The operator with the fewest canners still to take who can mind one more the whole time; any such in a stray manner. */
function operatorFor(state: DayState, manner: Manner | null, start: number, end: number): number | null {
  let chosen: number | null = null
  let least = Number.POSITIVE_INFINITY
  for (let one = 0; one < state.model.operators.length; one++) {
    const free = leastFree(state, state.rows.operators + one * state.width, start, end)
    if (free < 1 || (manner?.isStray && chosen !== null ? manner.random() < 0.5 : free >= least)) continue
    chosen = one
    least = free
  }
  return chosen
}
