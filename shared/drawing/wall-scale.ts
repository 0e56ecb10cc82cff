import type { KitchenTime } from '@/shared/time/kitchen-time'

/** The times between which a wall chart is drawn, in order: `from` < `emptyBy` ≤ `closesAt`. */
export type WallHours = { readonly from: KitchenTime; readonly emptyBy: KitchenTime; readonly closesAt: KitchenTime }

/** Across a wall chart of 1,920: names up to 210, the work from 236, the double line, clean-up, and the closed hall. */
export const WALL = { width: 1920, names: 24, work: 236, emptyBy: 1638, closed: 1867 } as const

/**
 * Where a time lies across the chart.
 *
 * The work up to "canners empty" takes the wide part, the clean-up the narrow one, so the scale may change at the double line.
 * Times outside the hours lie on the chart's edges.
 */
export function wallX({ from, emptyBy, closesAt }: WallHours, time: KitchenTime): number {
  if (time <= emptyBy) return round(WALL.work + (Math.max(0, time - from) * (WALL.emptyBy - WALL.work)) / (emptyBy - from))
  const part = closesAt > emptyBy ? Math.min(1, (time - emptyBy) / (closesAt - emptyBy)) : 1
  return round(WALL.emptyBy + part * (WALL.closed - WALL.emptyBy))
}

/** A line for a time on the axis; half hours have no label. */
export type WallTick = { readonly time: KitchenTime; readonly x: number; readonly isHour: boolean; readonly hasLabel: boolean }

const LABEL_WIDTH = 110

/** Hours and half hours from the first to the closing; where hours stand too close, every second one is labelled, and none that would be cut. */
export function wallTicks(hours: WallHours): WallTick[] {
  const first = Math.ceil(hours.from / 30) * 30
  const count = Math.max(0, Math.floor((hours.closesAt - first) / 30) + 1)
  const hourWidth = (60 * (WALL.emptyBy - WALL.work)) / (hours.emptyBy - hours.from)
  const labelEvery = Math.max(1, Math.ceil(LABEL_WIDTH / hourWidth)) * 60
  return Array.from({ length: count }, (_, index) => first + index * 30).map((time) => ({
    time,
    x: wallX(hours, time),
    isHour: time % 60 === 0,
    hasLabel: time % labelEvery === 0 && wallX(hours, time) + LABEL_WIDTH <= WALL.width,
  }))
}

const round = (length: number): number => Math.round(length * 10) / 10
