import type { DayModel, ModelCrew } from '@/shared/scheduling/day/day-model'

/** A canner load while the search runs. Slots; crews are named once for each person. */
export type StateLoad = {
  readonly family: number
  readonly kind: number
  readonly start: number
  readonly operator: number
  readonly loaders: readonly number[]
  readonly unloaders: readonly number[]
  jars: number
  trays: number
}

/** Where a batch stands; plain and never changed once made. */
export type Placement = {
  readonly prepStart: number
  readonly prepLength: number
  /** One crew index a person. */
  readonly prepCrews: readonly number[]
  readonly cookStart: number
  readonly kettleKind: number
  readonly fillStart: number
  readonly fillCrews: readonly number[]
  readonly loads: readonly StateLoad[]
}

/**
 * What is still free in every slot, and what stands where.
 *
 * All free counts lie in one array, a row of `width` slots for each crew, then prep places, fill stations, burners, stove watch, kettle
 * kinds, canner kinds and operators. Every change is written in a journal and can be taken back.
 */
export type DayState = {
  readonly model: DayModel
  readonly width: number
  readonly free: Int16Array
  readonly rows: {
    readonly places: number
    readonly stations: number
    readonly burners: number
    readonly watch: number
    readonly kettles: number
    readonly canners: number
    readonly operators: number
  }
  readonly placements: (Placement | null)[]
  /** Loads by family and start slot: index `family × width + start`. */
  readonly loadsAt: StateLoad[][]
  readonly breakStarts: number[]
  /** Three numbers a change of free counts: from, to, amount that takes it back; −1 stands for the next of `undos`. */
  readonly journal: number[]
  readonly undos: (() => void)[]
  /** Prep, cooking and filling by fill start for the batch being put in, where `basesKnown` holds the stamp. */
  readonly bases: (Omit<Placement, 'fillStart' | 'loads'> | null)[]
  readonly basesKnown: Int32Array
  /** What is known about the batch being put in: a row a team size for prep, row 0 for the filling; see `insertBatch`. */
  readonly known: Int32Array
  /** Marks what is known now; older marks mean nothing. */
  stamp: number
  /** Slots of canner taken by all loads. */
  cannerSlots: number
}

/** An empty kitchen: everybody free in their hours, each crew's break at the start of its window. */
export function emptyState(model: DayModel): DayState {
  const spare = Math.max(0, ...model.batches.map((batch) => batch.turn)) + 1
  const width = model.slots + spare
  const crews = model.crews.length
  const places = crews * width
  const kettles = places + 4 * width
  const canners = kettles + model.kettleKinds.length * width
  const operators = canners + model.cannerKinds.length * width
  const free = new Int16Array(operators + model.operators.length * width)
  const rows = { places, stations: places + width, burners: places + 2 * width, watch: places + 3 * width, kettles, canners, operators }
  const { day } = model
  model.crews.forEach(
    (crew, index) => void free.fill(crew.size, index * width + Math.min(crew.from, width), index * width + Math.min(crew.to, model.slots)),
  )
  free.fill(atMost(day.prepPlaces), places, rows.stations)
  free.fill(atMost(day.fillStations), rows.stations, rows.burners)
  free.fill(atMost(day.burners), rows.burners, rows.watch)
  free.fill(atMost(day.stoveWatch), rows.watch, kettles)
  model.kettleKinds.forEach((kind, index) => void free.fill(kind.ids.length, kettles + index * width, kettles + (index + 1) * width))
  model.cannerKinds.forEach((kind, index) => void free.fill(kind.ids.length, canners + index * width, canners + (index + 1) * width))
  model.operators.forEach(
    (one, index) =>
      void free.fill(
        atMost(one.most),
        operators + index * width + Math.min(one.from, width),
        operators + index * width + Math.min(one.to, model.slots),
      ),
  )
  const state: DayState = {
    ...{ model, width, free, rows, cannerSlots: 0, journal: [], undos: [], bases: [], basesKnown: new Int32Array(width), stamp: 0 },
    known: new Int32Array(width * (1 + Math.max(0, ...model.batches.map((batch) => batch.prepLength.length)))),
    placements: model.batches.map(() => null),
    loadsAt: Array.from({ length: model.families.length * width }, () => []),
    breakStarts: model.crews.map((crew) => crew.breakFrom),
  }
  model.crews.forEach((crew, index) => {
    if (crew.breakLength > 0) addTo(state, index * width, ...breakSpan(model, crew, crew.breakFrom), -crew.size)
  })
  settle(state)
  return state
}

/** So many of a thing are as good as any number: no row of free counts holds more. */
const MOST_OF_A_THING = 30_000
const atMost = (count: number) => Math.min(count, MOST_OF_A_THING)

/** The slots of the day that a crew's break takes when it starts then; a break may reach past closing. */
export const breakSpan = ({ slots }: DayModel, { breakLength }: ModelCrew, start: number): [from: number, to: number] => [
  Math.min(start, slots),
  Math.min(start + breakLength, slots),
]

/** Where the hold on people, kettle or canner ends: what takes no time still takes them in its slot, so that they are there, and once each. */
export const heldUntil = (from: number, to: number): number => Math.max(to, from + 1)

/** The least free count of a row in slots [from, to). */
export function leastFree({ free }: DayState, row: number, from: number, to: number): number {
  let least = 32_767
  for (let at = row + from; at < row + to; at++) {
    const here = free[at] ?? 0
    if (here < least) least = here
  }
  return least
}

/** True when a row has at least one free in every slot of [from, to). */
export function hasRoom({ free }: DayState, row: number, from: number, to: number): boolean {
  for (let at = row + from; at < row + to; at++) if ((free[at] ?? 0) < 1) return false
  return true
}

/** Adds to every slot of [from, to) of a row, and remembers it. */
export function addTo(state: DayState, row: number, from: number, to: number, amount: number): void {
  shift(state.free, row + from, row + to, amount)
  state.journal.push(row + from, row + to, -amount)
}

function shift(free: Int16Array, from: number, to: number, amount: number): void {
  for (let at = from; at < to; at++) free[at] = (free[at] ?? 0) + amount
}

/** Remembers how to take back a change that is not one of free counts. */
function remember(state: DayState, undo: () => void): void {
  state.journal.push(-1, 0, 0)
  state.undos.push(undo)
}

/** Takes back every change since the journal had this length. */
export function takeBack({ journal, undos, free }: DayState, mark: number): void {
  while (journal.length > mark) {
    const amount = journal.pop() ?? 0
    const to = journal.pop() ?? 0
    const from = journal.pop() ?? 0
    if (from < 0) undos.pop()?.()
    else shift(free, from, to, amount)
  }
}

/** Makes every change final. */
export function settle({ journal, undos }: DayState): void {
  journal.length = 0
  undos.length = 0
}

/** Takes (or with `sign` 1 gives back) all that a load needs besides its jars. */
export function bookLoad(state: DayState, load: StateLoad, sign: -1 | 1): void {
  const { model, width, rows } = state
  const family = model.families[load.family]
  if (!family) return
  const { start } = load
  const end = start + family.whole
  addTo(state, rows.canners + load.kind * width, start, heldUntil(start, end), sign)
  addTo(state, rows.burners, start, start + family.onHeat, sign)
  const unload = end - model.handling.unload
  for (const crew of load.loaders) addTo(state, crew * width, start, heldUntil(start, start + model.handling.load), sign)
  for (const crew of load.unloaders) addTo(state, crew * width, unload, heldUntil(unload, end), sign)
  if (load.operator >= 0) addTo(state, rows.operators + load.operator * width, start, end, sign)
  const here = state.loadsAt[load.family * width + start]
  if (sign < 0) here?.push(load)
  else here?.splice(here.indexOf(load), 1)
  state.cannerSlots -= sign * family.whole
  remember(state, () => {
    state.cannerSlots += sign * family.whole
    if (sign < 0) here?.splice(here.indexOf(load), 1)
    else here?.push(load)
  })
}

/** Puts jars on a load, or with a negative number takes them off; the load goes when its last tray goes. */
export function moveTray(state: DayState, load: StateLoad, jars: number, trays: 1 | -1): void {
  load.jars += jars
  load.trays += trays
  remember(state, () => {
    load.jars -= jars
    load.trays -= trays
  })
  if (load.trays === 0) bookLoad(state, load, 1)
}

/** Takes (or gives back) all that a placed batch needs up to the end of filling. */
export function bookBatch(state: DayState, index: number, placement: Placement, sign: -1 | 1): void {
  const { model, width, rows } = state
  const batch = model.batches[index]
  if (!batch) return
  const { prepStart, prepLength, prepCrews, cookStart, kettleKind, fillStart, fillCrews } = placement
  const filled = fillStart + batch.fill
  for (const crew of prepCrews) addTo(state, crew * width, prepStart, heldUntil(prepStart, prepStart + prepLength), sign)
  addTo(state, rows.places, prepStart, prepStart + prepLength, sign * prepCrews.length)
  addTo(state, rows.burners, cookStart, filled, sign)
  addTo(state, rows.watch, cookStart, filled, sign)
  addTo(state, rows.kettles + kettleKind * width, cookStart, heldUntil(cookStart, filled + batch.turn), sign)
  addTo(state, rows.stations, fillStart, filled, sign)
  for (const crew of fillCrews) addTo(state, crew * width, fillStart, heldUntil(fillStart, filled), sign)
}

/** True when somebody of a crew is asked for twice at once. */
export const isCrewOverbooked = ({ model, free, width }: DayState): boolean =>
  model.crews.some(({ from, to }, crew) =>
    free.subarray(crew * width + from, crew * width + Math.min(to, model.slots)).some((left) => left < 0),
  )

/** Takes a batch out of the day, with its trays. */
export function removeBatch(state: DayState, index: number): void {
  const placement = state.placements[index]
  const batch = state.model.batches[index]
  if (!placement || !batch) return
  bookBatch(state, index, placement, 1)
  placement.loads.forEach((load, tray) => void moveTray(state, load, -(batch.trays[tray] ?? 0), -1))
  setPlacement(state, index, null)
}

export function setPlacement(state: DayState, index: number, placement: Placement | null): void {
  const before = state.placements[index] ?? null
  state.placements[index] = placement
  remember(state, () => {
    state.placements[index] = before
  })
}

/** Moves a crew's break; the crew must be free in the new one, as far as it lies in its hours. */
export function moveBreak(state: DayState, crew: number, start: number): void {
  const { model, width } = state
  const one = model.crews[crew]
  const before = state.breakStarts[crew] ?? 0
  if (!one) return
  addTo(state, crew * width, ...breakSpan(model, one, before), one.size)
  addTo(state, crew * width, ...breakSpan(model, one, start), -one.size)
  state.breakStarts[crew] = start
  remember(state, () => {
    state.breakStarts[crew] = before
  })
}

/** The slot in which a placed batch's last jar is out. */
export function endOf(state: DayState, index: number): number {
  const placement = state.placements[index]
  const whole = state.model.families[state.model.batches[index]?.family ?? -1]?.whole ?? 0
  return placement ? Math.max(...placement.loads.map((load) => load.start)) + whole : 0
}
