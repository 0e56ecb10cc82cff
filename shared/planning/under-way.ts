import type { Occupation } from '@/shared/planning/day-calendar'
import type { Minding } from '@/shared/planning/day-problem'
import type { KitchenSetUp } from '@/shared/planning/kitchen-set-up'
import type { Booked, PlacedBatch } from '@/shared/planning/place-batch'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** [start, end) of a piece of equipment. */
export type Span = { readonly start: KitchenTime; readonly end: KitchenTime }

/** A piece of equipment that begun work holds. */
export type TakenThing = Span & { readonly id: string }

/** A person whom begun work holds. */
export type TakenPerson = Span & { readonly personId: string; readonly occupation: Occupation; readonly minding: Minding | null }

/** A kettle batch of which something has begun, as a placement must leave it. */
export type BatchUnderWay =
  /** Nothing is in the kettle yet; what was prepared or washed stays as it is. */
  | { readonly stage: 'prepared'; readonly prep: Booked | null; readonly wash: Booked | null; readonly boiling: BoilingJars | null }
  /** In the kettle, not filled: kettle, burner and cook stay. */
  | {
      readonly stage: 'cooking'
      readonly placed: Omit<PlacedBatch, 'fillStart' | 'fillEnd' | 'fill' | 'tableIndex' | 'prep' | 'wash'>
      readonly prep: Booked | null
      readonly wash: Booked | null
      readonly boiling: BoilingJars | null
    }
  /** Its jars are filled, or are being filled, and wait for a canner. */
  | { readonly stage: 'filled'; readonly placed: PlacedBatch; readonly loadBy: KitchenTime }

/** Empty jars that boil in a canner already: their load goes into it. */
export type BoilingJars = { readonly cannerId: string; readonly from: KitchenTime }

/** How the plan that stands does a task: kept where it costs nothing. Keys are task ids such as 'cook/plum-jam/3'. */
export type AsPlanned = {
  readonly slots: ReadonlyMap<string, Booked>
  readonly kettles: ReadonlyMap<string, string>
  readonly burners: ReadonlyMap<string, string>
  /** By batch. */
  readonly loads: ReadonlyMap<string, PlannedAtCanner>
}

export type PlannedAtCanner = {
  readonly cannerId: string
  readonly loadAt: KitchenTime
  readonly operatorId: string
  readonly loaderId: string
  readonly unloaderId: string
}

/** A running day for the search: what is taken, what is begun, and what the plan that stands says of the rest. */
export type UnderWay = {
  readonly now: KitchenTime
  readonly setUp: KitchenSetUp
  readonly things: readonly TakenThing[]
  readonly people: readonly TakenPerson[]
  /** When the water of each canner is hot at the soonest. */
  readonly hotAt: ReadonlyMap<string, KitchenTime>
  /** When a canner may not be used, by canner. */
  readonly outages: readonly TakenThing[]
  readonly batches: ReadonlyMap<string, BatchUnderWay>
  /** Produce that comes later, by preparation. */
  readonly produceAt: ReadonlyMap<string, KitchenTime>
  readonly lastOperator: ReadonlyMap<string, string>
  readonly asPlanned: AsPlanned
  /** When the last of the loads that are in a canner now is out. */
  readonly finishAt: KitchenTime
}
