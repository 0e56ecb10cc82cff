import 'server-only'
import { database } from '@/lib/db/client'
import { type BatchRow, batchRows, type LoadRow, loadRows } from '@/lib/queries/floor-rows'
import { dayClock } from '@/lib/queries/day-clock'
import type { DayHead } from '@/lib/queries/day-head'
import { plannedBatchesOfLoads } from '@/lib/queries/planned-loads'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Everything the floor screen shows: what runs, what waits, what is next. */
export interface FloorNow {
  readonly loads: readonly LoadRow[]
  readonly batches: readonly BatchRow[]
  /** Batch codes by load code, as planned. */
  readonly planned: ReadonlyMap<string, readonly string[]>
  readonly clock: FloorClock
}

/** The kitchen's clock for a screen: what it says, and how a kitchen time becomes an instant there. */
export interface FloorClock {
  /** With its seconds as a part of a minute. */
  readonly now: KitchenTime
  /** The server's own time, in milliseconds since 1970. */
  readonly serverNow: number
  /** A demo day: times are taken as typed, so nobody has to wait for the clock. */
  readonly isTyped: boolean
}

/** When the kitchen's clock will say so, in milliseconds since 1970. */
export const instantAt = ({ now, serverNow }: FloorClock, time: KitchenTime): number => Math.round(serverNow + (time - now) * 60_000)

/** The clock of a day's screens. At most one statement. */
export async function floorClock(groupId: string, day: DayHead, now: Date): Promise<FloorClock> {
  return { now: await dayClock(database(), groupId, day, now), serverNow: now.getTime(), isTyped: day.isDemo }
}

/** Reads the floor in four statements, whatever stands on it. */
export async function floorNow(groupId: string, day: DayHead, now: Date): Promise<FloorNow> {
  const db = database()
  const [loads, batches, planned, clock] = await Promise.all([
    loadRows(db, groupId, day.id),
    batchRows(db, groupId, day.id),
    plannedBatchesOfLoads(db, groupId, day.id),
    floorClock(groupId, day, now),
  ])
  return { loads, batches, planned, clock }
}

/** What the batch and load screens choose from. */
export interface FloorChoices {
  readonly kettles: readonly { readonly id: string; readonly label: string }[]
  readonly canners: readonly { readonly id: string; readonly label: string; readonly outOfUse: string | null }[]
  readonly operators: readonly { readonly id: string; readonly name: string; readonly skills: readonly string[] }[]
  readonly lots: readonly { readonly id: string; readonly code: string; readonly item: string; readonly from: string }[]
  readonly lids: readonly { readonly id: string; readonly lotCode: string }[]
  readonly lidLotId: string | null
  /** Glass that is kept apart: lent by a household, or from a shop. */
  readonly glass: readonly { readonly id: string; readonly lotCode: string; readonly jarSize: string | null }[]
}

/** Kettles, canners, trained adults, ingredient lots, lid lots and jars that are kept apart, to choose from. Six statements. */
export async function floorChoices(groupId: string, day: DayHead): Promise<FloorChoices> {
  const db = database()
  const { kitchenId } = day
  const [kettles, canners, people, lots, supplies, own] = await Promise.all([
    db.kettle.findMany({
      where: { groupId, kitchenId, outOfUse: null, keptFor: { not: 'jars' } },
      select: { id: true, label: true },
      orderBy: { label: 'asc' },
    }),
    db.canner.findMany({ where: { groupId, kitchenId }, select: { id: true, label: true, outOfUse: true }, orderBy: { label: 'asc' } }),
    db.person.findMany({
      where: { groupId, active: true, ageClass: 'adult' },
      select: { id: true, name: true, skills: true },
      orderBy: { name: 'asc' },
    }),
    db.ingredientLot.findMany({
      where: { groupId, dayId: day.id },
      select: { id: true, code: true, item: true, source: true, household: { select: { name: true } } },
      orderBy: { code: 'asc' },
    }),
    db.supplyLot.findMany({
      where: { groupId, kind: { in: ['lid', 'jar'] }, count: { gt: 0 } },
      select: { id: true, lotCode: true, kind: true, jarSize: true, householdId: true, isShopJar: true },
      orderBy: { boughtOn: 'desc' },
    }),
    db.day.findUniqueOrThrow({ where: { groupId_id: { groupId, id: day.id } }, select: { lidLotId: true } }),
  ])
  return {
    kettles,
    canners,
    operators: people.filter(({ skills }) => skills.some((skill) => skill.endsWith('-operator'))),
    lots: lots.map(({ household, source, ...lot }) => ({ ...lot, from: household?.name ?? source })),
    lids: supplies.filter(({ kind }) => kind === 'lid').map(({ id, lotCode }) => ({ id, lotCode })),
    lidLotId: own.lidLotId,
    glass: supplies
      .filter(({ kind, householdId, isShopJar }) => kind === 'jar' && (householdId !== null || isShopJar))
      .map(({ id, lotCode, jarSize }) => ({ id, lotCode, jarSize })),
  }
}
