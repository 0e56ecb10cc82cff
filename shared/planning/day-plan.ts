import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import type { ShorterShift } from '@/shared/planning/shorter-shifts'
import type { KitchenTime } from '@/shared/time/kitchen-time'

export type JarRange = { readonly low: number; readonly typical: number; readonly high: number }

/** One kettle's worth. */
export type PlannedBatch = {
  /** Unique in the plan and stable for the same problem, e.g. 'plum-jam/3'. */
  readonly id: string
  /** On charts and jars, e.g. 'J3'. Numbered in order of cooking. */
  readonly code: string
  readonly preparationId: string
  /** How many tested batches are in the kettle; 1 for jam and jelly, always. */
  readonly multiple: number
  readonly jars: JarRange
  readonly kettleId: string
  readonly cookStart: KitchenTime
  readonly cookEnd: KitchenTime
  readonly fillStart: KitchenTime
  readonly fillEnd: KitchenTime
  readonly taskIds: readonly string[]
}

/** One canner's worth. Times in order: jarBoilAt ≤ loadAt < heatAt < boilAt < processEndAt ≤ restEndAt < emptyAt. */
export type PlannedLoad = {
  readonly id: string
  /** 'L01', numbered in order of loading. */
  readonly code: string
  readonly cannerId: string
  readonly preparationId: string
  readonly method: Method
  readonly jarSize: JarSize
  readonly batchParts: readonly { readonly batchId: string; readonly jars: JarRange }[]
  /** The canner is taken from here: earlier than loadAt only when empty jars boil in it. */
  readonly jarBoilAt: KitchenTime
  readonly loadAt: KitchenTime
  /** Loaded; come-up begins. */
  readonly heatAt: KitchenTime
  /** Pressure only: steam flows, venting begins; null otherwise. */
  readonly ventAt: KitchenTime | null
  /** Pressure only: vent closed; null otherwise. */
  readonly ventEndAt: KitchenTime | null
  /** Planned full boil or full pressure: the process time starts. */
  readonly boilAt: KitchenTime
  readonly processEndAt: KitchenTime
  /** Ready to lift out. */
  readonly restEndAt: KitchenTime
  readonly emptyAt: KitchenTime
  readonly processMinutes: number
  readonly psi: number | null
  /** Publication and section of the minutes. */
  readonly source: string
  readonly operatorId: string
  readonly loaderId: string
  readonly unloaderId: string
  /** Latest minute the jars may still be loaded. */
  readonly latestLoadAt: KitchenTime
}

export type PlanTaskKind =
  | 'brief'
  | 'soak'
  | 'preheat'
  | 'prep'
  | 'jar-heat'
  | 'cook'
  | 'hold'
  | 'fill'
  | 'load'
  | 'come-up'
  | 'process'
  | 'rest'
  | 'unload'
  | 'wash'
  | 'label'
  | 'clean-up'
  | 'break'

export type PlannedTask = {
  readonly id: string
  readonly kind: PlanTaskKind
  readonly start: KitchenTime
  readonly end: KitchenTime
  /** 'watch': minds it without hands on it. Tasks of equipment alone have no people. */
  readonly attention: 'hands-on' | 'watch'
  readonly peopleIds: readonly string[]
  readonly kettleId: string | null
  readonly burnerId: string | null
  readonly cannerId: string | null
  /** 0-based fill table. */
  readonly tableIndex: number | null
  readonly batchId: string | null
  readonly loadId: string | null
}

export type NightBeforeStep = {
  readonly preparationId: string
  readonly label: string
  readonly hours: number
  /** The planned start: the evening before where the latest start falls in the night. Negative: minutes before 00:00 of the day. */
  readonly startAt: KitchenTime
  readonly endAt: KitchenTime
  /** The latest start and the latest end. */
  readonly startBy: KitchenTime
  readonly doneBy: KitchenTime
  readonly householdId: string
  readonly batchIds: readonly string[]
  /** True when nobody offered and the plan proposes this household. */
  readonly proposed: boolean
}

/** What fixes the finish time. */
export type BindingReason =
  | {
      readonly kind: 'canners'
      readonly method: Method
      readonly cannerIds: readonly string[]
      readonly from: KitchenTime
      readonly slackMinutes: number
    }
  | { readonly kind: 'kettle'; readonly kettleIds: readonly string[]; readonly from: KitchenTime; readonly slackMinutes: number }
  | { readonly kind: 'burners'; readonly from: KitchenTime; readonly slackMinutes: number }
  | { readonly kind: 'people'; readonly skill: string; readonly from: KitchenTime; readonly slackMinutes: number }
  | { readonly kind: 'first-load'; readonly from: KitchenTime; readonly slackMinutes: number }

/** What would fix the finish once the binding limit is lifted, and how much sooner the day could end until it does. */
export type NextLimit =
  | { readonly kind: 'burners' | 'kettles' | 'fill-tables'; readonly slackMinutes: number }
  | { readonly kind: 'people'; readonly skill: string; readonly slackMinutes: number }

/** Work that found no hands; the food itself is safe and planned. */
export type PlanShortage =
  | { readonly kind: 'jars'; readonly preparationId: string; readonly wanted: number; readonly planned: JarRange }
  | { readonly kind: 'hands'; readonly stage: 'wash' | 'label' | 'clean-up'; readonly batchId: string | null; readonly minutes: number }
  | {
      readonly kind: 'language'
      readonly personId: string
      readonly language: string
      /** Work at which nobody there speaks with them; empty when nobody in the room does at all. */
      readonly taskIds?: readonly string[]
    }
  | { readonly kind: 'break'; readonly personId: string; readonly minutes: number }

/** Somebody who speaks with a person at their work, where the others at that station do not. */
export type LanguageHelp = { readonly taskId: string; readonly personId: string; readonly helperId: string }

export type CannerMinutes = { readonly needed: number; readonly available: number; readonly slack: number }

export type DayPlan = {
  readonly dayId: string
  readonly batches: readonly PlannedBatch[]
  readonly loads: readonly PlannedLoad[]
  readonly tasks: readonly PlannedTask[]
  readonly nightBefore: readonly NightBeforeStep[]
  /** The last jar is out of the last canner. */
  readonly finishAt: KitchenTime
  readonly cleanUpEndAt: KitchenTime
  /** Over all usable canners, first load to canners-empty-by. */
  readonly cannerMinutes: CannerMinutes
  /** The same by method. */
  readonly cannerMinutesByMethod: readonly (CannerMinutes & { readonly method: Method })[]
  /** No plan for the same batches can finish earlier than this. */
  readonly lowerBound: KitchenTime
  readonly bindingReason: BindingReason
  /** Undefined in plans saved before it was looked at; null where nothing else is used. */
  readonly nextLimit?: NextLimit | null
  /** Loads that fix the finish, in order of time. */
  readonly criticalLoadIds: readonly string[]
  readonly shortages: readonly PlanShortage[]
  /** Undefined in plans saved before it was looked at. */
  readonly languageHelp?: readonly LanguageHelp[]
  /** The priority rule that gave this plan. */
  readonly rule: string
}

/** The limit that stops a plan. Minutes, jars, litres or people as the kind says. */
export type PlanLimit =
  | { readonly kind: 'canner-minutes'; readonly method: Method; readonly canners: number }
  | { readonly kind: 'no-canner-for-method'; readonly method: Method; readonly preparationId: string; readonly whyNot: readonly string[] }
  | { readonly kind: 'canner-too-small'; readonly jarSize: JarSize; readonly preparationId: string }
  | { readonly kind: 'kettle-too-small'; readonly preparationId: string }
  | { readonly kind: 'burners' }
  | { readonly kind: 'kettles' }
  | { readonly kind: 'fill-tables' }
  | {
      readonly kind: 'people-with-skill'
      readonly skills: readonly string[]
      readonly stage: PlanTaskKind
      readonly preparationId: string | null
    }
  | { readonly kind: 'headcount' }
  | { readonly kind: 'rack' }
  | { readonly kind: 'lead-step'; readonly preparationId: string; readonly label: string }
  | { readonly kind: 'jars-need-boiling'; readonly preparationId: string }
  | { readonly kind: 'hours' }
  | { readonly kind: 'bad-number'; readonly field: string }

/** One change that was planned again with this result; never a guess. */
export type WayOut = {
  readonly change:
    | { readonly kind: 'jars-washed-hot'; readonly preparationIds: readonly string[]; readonly minutes: number }
    | { readonly kind: 'jars-boiled-in-pot'; readonly preparationIds: readonly string[] }
    /** `withBurner`: no burner is left for it, so it brings one. */
    | { readonly kind: 'one-more-canner'; readonly method: Method; readonly withBurner?: boolean }
    | {
        readonly kind: 'move-to-pressure'
        readonly preparationId: string
        readonly loads: number
        readonly jars: number
        readonly cannerIds: readonly string[]
      }
    | { readonly kind: 'other-jars'; readonly preparationId: string; readonly jarSize: JarSize; readonly jars: number }
    /** `people`: how many more; one when left out. */
    | { readonly kind: 'one-more-operator'; readonly method: Method; readonly people?: number }
    | { readonly kind: 'fewer-batches'; readonly preparationId: string; readonly batches: number; readonly jars: number }
    | { readonly kind: 'start-earlier'; readonly minutes: number }
    | { readonly kind: 'stay-later'; readonly minutes: number }
    | { readonly kind: 'one-more-burner' }
    /** People who are too many in the room where shifts overlap come later or go earlier than they offered. */
    | { readonly kind: 'shorter-shifts'; readonly shifts: readonly ShorterShift[] }
    | { readonly kind: 'one-more-person'; readonly skills: readonly string[] }
    | { readonly kind: 'drop-preparation'; readonly preparationId: string }
  /** Hours of people that are cut besides, where the room would hold too many at once and no change alone is enough. */
  readonly besides?: readonly ShorterShift[]
  readonly fits: boolean
  /** What stops the day with this change, where something still does. */
  readonly stoppedBy?: Omit<PlanRefusal, 'waysOut'>
  /** Null when it does not fit. */
  readonly finishAt: KitchenTime | null
  readonly cannerMinutes: CannerMinutes
  readonly cannerMinutesByMethod: readonly (CannerMinutes & { readonly method: Method })[]
}

/** Why no plan is given, and what would give one. */
export type PlanRefusal = {
  readonly kind: 'does-not-fit'
  readonly limit: PlanLimit
  /** In the unit of the limit: minutes, people, jars, litres. */
  readonly needed: number
  readonly available: number
  /** Where in the day it binds, when one moment can be named. */
  readonly at: KitchenTime | null
  /** Loads of the day; of one method alone where its canner minutes are the limit. */
  readonly loadCount: number
  /** Fitting ones first, then by least loss. */
  readonly waysOut: readonly WayOut[]
}

export type TaskActual = {
  readonly loadCode: string
  readonly cannerId: string
  /** Who minds it, once it is loaded; null or left out: as planned. */
  readonly operatorId?: string | null
  readonly loadedAt: KitchenTime | null
  readonly boilAt: KitchenTime | null
  readonly processEndAt: KitchenTime | null
  readonly emptyAt: KitchenTime | null
  readonly jarsIn: number | null
}
