import type { Produce } from '@/app/_drawings/produce'
import type { LoadStages } from '@/shared/drawing/heat-outline'
import type { WallRows } from '@/shared/drawing/wall-rows'
import { type WallHours, wallX } from '@/shared/drawing/wall-scale'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A kettle, a fill table or a canner, with who works it. */
export type WallStation = { id: string; name: string; person?: string }

/** A kettle batch from kettle to fill table. */
export type WallBatch = {
  id: string
  code: string
  produce: Produce
  kettleId: string
  cookStart: KitchenTime
  cookEnd: KitchenTime
  tableId: string
  fillStart: KitchenTime
  fillEnd: KitchenTime
  /** The household that soaks it since the evening before. */
  soakedBy?: string
}

/** A canner load; real times where it has begun, planned ones from then on. */
export type WallLoad = {
  id: string
  /** What stands on it: the codes of its batches. */
  label: string
  batchIds: readonly string[]
  produce: Produce
  cannerId: string
  jars: number
  loadAt: KitchenTime
  stages: LoadStages
  /** When it should have been loaded; drawn as minutes late when it was later. */
  plannedLoadAt?: KitchenTime
  /** Latest minute its jars may be loaded. */
  latestLoadAt?: KitchenTime
  /** It fixes the finish. */
  isCritical: boolean
}

/** All that a wall chart draws. `now` is null on a plan that has not begun. */
export type WallDay = {
  hours: WallHours
  now: KitchenTime | null
  kettles: readonly WallStation[]
  tables: readonly WallStation[]
  canners: readonly WallStation[]
  batches: readonly WallBatch[]
  loads: readonly WallLoad[]
}

/** Done is filled, running is filled up to now, to come is outlined. A plan that has not begun is drawn filled. */
export type Doneness = 'done' | 'running' | 'to-come'

export function doneness(start: KitchenTime, end: KitchenTime, now: KitchenTime | null): Doneness {
  if (now === null || end <= now) return 'done'
  return start < now ? 'running' : 'to-come'
}

/** The frame that every part of the chart is drawn in. */
export type WallFrame = { day: WallDay; rows: WallRows; xOf: (time: KitchenTime) => number }

export const wallFrame = (day: WallDay, rows: WallRows): WallFrame => ({ day, rows, xOf: (time) => wallX(day.hours, time) })

/** Middle or ground line of a station. */
export function rowOf(stations: readonly WallStation[], lines: readonly number[], id: string): number {
  const index = stations.findIndex((station) => station.id === id)
  return lines[index] ?? lines[0] ?? 0
}
