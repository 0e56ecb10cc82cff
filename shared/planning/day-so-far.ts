import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What has really happened to a kettle batch of the plan. Times are kitchen minutes, null while they have not come. */
export type BatchSoFar = {
  /** As in the plan, 'plum-jam/3'. */
  readonly batchId: string
  readonly state: 'planned' | 'cooking' | 'filled' | 'abandoned'
  /** The kettle it is in, which may not be the planned one. */
  readonly kettleId: string | null
  readonly startedAt: KitchenTime | null
  /** The first jar is being filled; null while nobody fills, or nobody knows. */
  readonly fillStartedAt: KitchenTime | null
  readonly filledAt: KitchenTime | null
  readonly jarsFilled: number | null
  readonly waiting: WaitingSoFar | null
}

/** Filled jars of a batch that are in no canner. */
export type WaitingSoFar = {
  readonly jars: number
  /** When they were filled, or taken out of a load that was given up. */
  readonly since: KitchenTime
  /** The last minute at which they may go in; null: as long after `since` as the preparation lets filled jars wait. */
  readonly loadBy: KitchenTime | null
}

/** What has really happened to a canner load, planned or not. */
export type LoadSoFar = {
  /** As in the plan, 'L03'. */
  readonly loadId: string
  readonly state: 'planned' | 'in-canner' | 'done' | 'failed'
  readonly cannerId: string
  readonly operatorId: string | null
  readonly loadedAt: KitchenTime | null
  /** The last full boil or pressure; null again after a loss. */
  readonly boilAt: KitchenTime | null
  readonly lostAt: KitchenTime | null
  readonly processEndAt: KitchenTime | null
  readonly emptyAt: KitchenTime | null
  /** Minutes that it must meet, as looked up when it was loaded; null before. */
  readonly processMinutes: number | null
  /** Jars in it by batch. */
  readonly jars: readonly { readonly batchId: string; readonly jars: number }[]
}

/** Something that is not as the plan took it to be. */
export type Setback =
  /** May not be used from then on; `until` null: for the rest of the day. */
  | { readonly kind: 'canner-out'; readonly cannerId: string; readonly from: KitchenTime; readonly until: KitchenTime | null }
  | { readonly kind: 'person-away'; readonly personId: string; readonly from: KitchenTime }
  | { readonly kind: 'person-late'; readonly personId: string; readonly at: KitchenTime }
  | { readonly kind: 'produce-late'; readonly preparationId: string; readonly at: KitchenTime }
  /** There is produce for so many batches in all, those begun or done counted in. */
  | { readonly kind: 'produce-short'; readonly preparationId: string; readonly batches: number }

/** The day as it stands: what a new plan from now starts with. */
export type DaySoFar = {
  readonly now: KitchenTime
  readonly batches: readonly BatchSoFar[]
  readonly loads: readonly LoadSoFar[]
  readonly setbacks: readonly Setback[]
}

/** A day of which nothing has happened yet. */
export const nothingSoFar = (now: KitchenTime): DaySoFar => ({ now, batches: [], loads: [], setbacks: [] })
