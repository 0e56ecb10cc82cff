import 'server-only'
import type { CommandContext, Outcome } from '@/lib/commands/command'
import type { FloorProblem } from '@/shared/floor/floor-problem'
import type { LoadClock } from '@/shared/floor/process-clock'
import type { LoadState } from '@/shared/lifecycle/load-states'
import { ok, type Result, refuse } from '@/shared/result/result'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notFound, type Refusal } from '@/shared/wording/refusal'
import { type FloorDay, lockFloorDay, timeOnDay } from './floor-day'

/** A load as its commands need it: its clock, with the row's own id. */
export interface FloorLoad extends LoadClock {
  readonly id: string
  readonly cannerId: string
}

/** Reads a load of the day; null when there is none. The day's lock keeps it still. */
export async function readLoad({ tx, actor: { groupId } }: CommandContext, dayId: string, loadId: string): Promise<FloorLoad | null> {
  const load = await tx.cannerLoad.findFirst({ where: { groupId, id: loadId, dayId }, select: LOAD_COLUMNS })
  return load && { ...load, state: load.state as LoadState }
}

/** Writes a clock back to its row. */
export async function saveClock({ tx, actor: { groupId } }: CommandContext, loadId: string, clock: LoadClock): Promise<void> {
  const { state, processMinutes, loadedAt, atTemperatureAt, temperatureLostAt, processedAt, emptiedAt, restarts } = clock
  const data = { state, processMinutes, loadedAt, atTemperatureAt, temperatureLostAt, processedAt, emptiedAt, restarts }
  await tx.cannerLoad.update({ where: { groupId_id: { groupId, id: loadId } }, data })
}

/** One tap at a canner: what it does to the load's clock, and what else it does to rows. */
export interface Tap {
  readonly dayId: string
  readonly loadId: string
  readonly at?: number | undefined
  readonly round?: 'up' | 'down' | undefined
  readonly move: (clock: LoadClock, at: KitchenTime) => Result<LoadClock, FloorProblem>
  readonly also?: (load: FloorLoad, at: KitchenTime, day: FloorDay) => Promise<Result<{ readonly [key: string]: unknown }, Refusal>>
}

/** Moves a load one step on by its clock, in a running day. */
export async function tapLoad(context: CommandContext, { dayId, loadId, at, round, move, also }: Tap): Promise<Result<Outcome, Refusal>> {
  const day = await lockFloorDay(context, dayId, ['running'])
  if (!day.ok) return day
  const load = await readLoad(context, dayId, loadId)
  if (!load) return refuse(notFound('Canner load'))
  const when = await timeOnDay(context, day.value, at, { kind: 'end', after: [], round })
  if (!when.ok) return when
  const moved = move(load, when.value)
  if (!moved.ok) return refuse(sayFloorProblem(moved.problem))

  await saveClock(context, load.id, moved.value)
  const more = also ? await also(load, when.value, day.value) : ok({})
  if (!more.ok) return more
  const { state, restarts, atTemperatureAt, processMinutes } = moved.value
  const detail = { code: load.code, at: formatClock(when.value), from: load.state, state, restarts, processMinutes, ...more.value }
  const notBefore = atTemperatureAt === null || processMinutes === null ? null : formatClock(atTemperatureAt + processMinutes)
  return ok({
    reply: { loadId: load.id, code: load.code, state, restarts, notBefore },
    history: [{ subject: `canner load ${load.id}`, detail, dayId }],
  })
}

const LOAD_COLUMNS = {
  id: true,
  code: true,
  state: true,
  cannerId: true,
  processMinutes: true,
  loadedAt: true,
  atTemperatureAt: true,
  temperatureLostAt: true,
  processedAt: true,
  emptiedAt: true,
  restarts: true,
} as const
