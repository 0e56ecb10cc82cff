import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { WaitingJars } from '@/shared/floor/check-loading'
import { type LoadProcess, type LoadProcessProblem, loadProcess, readRowKey } from '@/shared/floor/load-process'
import { keepingDeadline, type KeepingRule } from '@/shared/floor/unsealed-jars'
import type { LoadCanner } from '@/shared/forms/floor'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method, Pack } from '@/shared/kitchen/methods'
import type { Recipe } from '@/shared/recipes/recipe'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notFound, type Refusal } from '@/shared/wording/refusal'
import type { FloorDay } from './floor-day'
import type { FloorCanner } from './load-people-and-canner'
import type { FloorLoad } from './one-load'
import { openLot } from './one-lot'

/** Jars of one batch that are filled and in no canner, lowest numbers first. */
export interface WaitingBatch {
  readonly id: string
  readonly code: string
  readonly filledAt: number | null
  readonly letter: string
  readonly jarSize: JarSize
  readonly method: Method
  readonly jarTreatment: string
  readonly processRowKey: string
  readonly processMinutes: number
  /** Of a group's own recipe: which conditions of the process stand confirmed. */
  readonly own: Recipe['own']
  readonly jars: readonly WaitingJar[]
}

/** A filled jar that waits for a canner. */
export interface WaitingJar {
  readonly id: string
  readonly shortName: string
  readonly lotId: string | null
  /** Loads it went through already. */
  readonly turns: number
  /** After a load that failed, or a lid that did not seal: until when a whole new process may begin, and under which published rule. */
  readonly keep: { readonly rule: KeepingRule; readonly until: KitchenTime } | null
}

/** The jars that go in: all that wait of the chosen batches, or the first so many of them in the order of the batches. */
export async function takeWaiting(
  { tx, actor: { groupId } }: CommandContext,
  { dayId, batchIds, jars: wanted }: LoadCanner,
): Promise<Result<WaitingBatch[], Refusal>> {
  const batches = await tx.kettleBatch.findMany({
    where: { groupId, dayId, id: { in: batchIds } },
    orderBy: { code: 'asc' },
    select: {
      id: true,
      code: true,
      filledAt: true,
      preparation: {
        select: {
          ...{ letter: true, jarSize: true, method: true, jarTreatment: true, processRowKey: true, processMinutes: true },
          id: true,
        },
      },
      jars: {
        where: { state: 'filled', OR: [NEVER_PROCESSED, TO_BE_PROCESSED_AGAIN] },
        orderBy: { shortName: 'asc' },
        select: {
          id: true,
          shortName: true,
          lotId: true,
          loads: { orderBy: { turn: 'desc' }, select: { load: { select: { state: true, processedAt: true, emptiedAt: true } } } },
        },
      },
    },
  })
  if (batches.length !== batchIds.length) return refuse(notFound('Kettle batch'))
  const recipes = await recipesOfDay(tx, groupId, dayId)
  const waiting: WaitingBatch[] = []
  for (const { jars, preparation, ...batch } of batches) {
    const { letter, jarSize, jarTreatment, method, processRowKey, processMinutes } = preparation
    if (method === null || processRowKey === null || processMinutes === null)
      return refuse(sayFloorProblem({ kind: 'keeps-cold', batch: batch.code }))
    const { pack } = readRowKey(processRowKey)
    const waitingJars = jars.map(({ loads, ...jar }) => ({ ...jar, turns: loads.length, keep: keepingOf(pack, loads[0]?.load) }))
    const process = { method: method as Method, processRowKey, processMinutes, own: recipes.of(preparation.id).own }
    waiting.push({ ...batch, letter, jarTreatment, ...process, jarSize: jarSize as JarSize, jars: waitingJars })
  }
  const there = waiting.reduce((sum, batch) => sum + batch.jars.length, 0)
  if (wanted !== undefined && wanted > there) return refuse(sayFloorProblem({ kind: 'too-few-waiting', asked: wanted, waiting: there }))
  return ok(firstJars(waiting, wanted ?? there))
}

interface LastLoad {
  readonly state: string
  readonly processedAt: KitchenTime | null
  readonly emptiedAt: KitchenTime | null
}

/** Until when a jar that was in a canner before may go into one again; null for a jar that was in none. */
function keepingOf(pack: Pack, last: LastLoad | undefined): WaitingJar['keep'] {
  if (!last) return null
  const wasProcessed = last.state === 'done'
  const since = wasProcessed ? last.processedAt : last.emptiedAt
  return since === null ? null : keepingDeadline({ pack, wasProcessed, since })
}

/** Refuses jars whose hours are over: they are not processed again but thrown out. */
export function checkKeeping(batches: readonly WaitingBatch[], at: KitchenTime): Result<KitchenTime, Refusal> {
  const late = batches.flatMap(({ jars }) => jars).find(({ keep }) => keep !== null && at > keep.until)
  if (!late?.keep) return ok(at)
  return refuse(sayFloorProblem({ kind: 'too-late-to-keep', hours: late.keep.rule.hours, deadline: late.keep.until }))
}

/** In no canner yet, or only in loads that were given up. */
export const NEVER_PROCESSED = { loads: { every: { load: { state: 'failed' } } } }

/** Did not seal, filled again with a new lid: its loads are over. */
export const TO_BE_PROCESSED_AGAIN = { seal: 'unsealed', loads: { every: { load: { state: { in: ['done', 'failed'] } } } } }

function firstJars(batches: readonly WaitingBatch[], wanted: number): WaitingBatch[] {
  let left = wanted
  return batches.flatMap((batch) => {
    const jars = batch.jars.slice(0, left)
    left -= jars.length
    return jars.length > 0 ? [{ ...batch, jars }] : []
  })
}

/** The process of the load, and each batch as the loading rules look at it. Every batch is looked up: two batches in one load must come to the same. */
export function processOf(
  day: FloorDay,
  canner: FloorCanner,
  batches: readonly WaitingBatch[],
): Result<LoadProcess & { readonly waiting: readonly WaitingJars[] }, LoadProcessProblem | { readonly kind: 'nothing-to-load' }> {
  let process: LoadProcess | undefined
  const waiting: WaitingJars[] = []
  for (const batch of batches) {
    const found = loadProcess({ ...batch, ...canner, confirmed: batch.own?.confirmed, elevationFeet: day.elevationFeet, day: day.date })
    if (!found.ok) return found
    // Never less than was planned for the same kind of canner: too long is safe, too short is not.
    const minutes = canner.method === batch.method ? Math.max(found.value.minutes, batch.processMinutes) : found.value.minutes
    process ??= { ...found.value, minutes }
    const { pack } = readRowKey(batch.processRowKey)
    waiting.push({
      batch: batch.code,
      jars: batch.jars.length,
      jarSize: batch.jarSize,
      pack,
      method: batch.method,
      processRowKey: found.value.rowKey,
      processMinutes: minutes,
    })
  }
  return process ? ok({ ...process, waiting }) : refuse({ kind: 'nothing-to-load' })
}

/** Writes which jars are in the load. A jar that goes in for the first time gets the lot of its batch and this load; a lot never changes after that. */
export async function giveLots(
  context: CommandContext,
  day: FloorDay,
  load: FloorLoad,
  batches: readonly WaitingBatch[],
): Promise<string[]> {
  const { tx, actor } = context
  const { groupId } = actor
  const numbers: string[] = []
  for (const batch of batches) {
    const fresh = batch.jars.filter((jar) => jar.lotId === null).map((jar) => jar.id)
    if (fresh.length > 0) {
      const lot = await openLot(context, day, batch, load)
      await tx.jar.updateMany({ where: { groupId, id: { in: fresh } }, data: { lotId: lot.id } })
      numbers.push(lot.lotNumber)
    }
    await tx.jarLoad.createMany({ data: batch.jars.map((jar) => ({ groupId, jarId: jar.id, loadId: load.id, turn: jar.turns + 1 })) })
    await tx.jar.updateMany({ where: { groupId, id: { in: batch.jars.map((jar) => jar.id) } }, data: { whereNow: 'canner' } })
  }
  return numbers
}
