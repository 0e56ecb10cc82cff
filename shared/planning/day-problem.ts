import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** The hours of one session, all as kitchen minutes; durations in minutes. */
export type DayWindow = {
  /** The key turns: water may be heated from here on. */
  readonly accessAt: KitchenTime
  readonly peopleArriveAt: KitchenTime
  readonly briefingMinutes: number
  /** No canner is loaded before this. */
  readonly firstLoadAt: KitchenTime
  /** The last jar is out of the last canner by then. */
  readonly cannersEmptyBy: KitchenTime
  /** Everybody is out, clean-up included. */
  readonly hardEnd: KitchenTime
  readonly cleanUpMinutes: number
  /** People allowed in the room at once; null when nobody limits it. */
  readonly headcountLimit: number | null
}

/** What a pot is kept for. 'any' cooks everything; 'jars' only boils or warms empty jars. */
export type KettleUse = 'jam' | 'brine' | 'cook' | 'jars' | 'any'

export type PlanKettle = {
  readonly id: string
  readonly label: string
  /** Usable volume in litres. */
  readonly litres: number
  readonly material: string | null
  readonly use: KettleUse
  /** Minutes to wash it between batches. */
  readonly washMinutes: number
}

export type PlanCanner = {
  readonly id: string
  readonly label: string
  readonly method: Method
  readonly gauge: Gauge | null
  /** Jars held in one run, by size; a missing size does not fit. */
  readonly capacity: Readonly<Partial<Record<JarSize, number>>>
  readonly usable: boolean
  /** Why it may not be used ("dial gauge not tested this year"), for the refusal; null when usable. */
  readonly whyNot: string | null
  /** Minutes its water needs before the first load; the kitchen's own estimate. */
  readonly preheatMinutes: number
}

export type BurnerUse = 'canner' | 'kettle' | 'brine' | 'jars'

export type PlanBurner = {
  readonly id: string
  readonly label: string
  readonly kind: 'gas' | 'electric' | 'portable-electric' | 'outdoor-gas'
  readonly btuPerHour: number | null
  readonly watts: number | null
  /** Electric circuit; null for gas. */
  readonly circuit: string | null
  /** Only these; undefined means everything its kind can do. A portable electric ring never heats a canner or a jam pot. */
  readonly forUses?: readonly BurnerUse[]
}

/** Electric circuits and what each may carry. */
export type PlanCircuit = { readonly id: string; readonly watts: number }

export type PlanPerson = {
  readonly id: string
  readonly name: string
  readonly householdId: string | null
  /** Free words of this group, e.g. 'prep', 'jam', 'boiling-water-operator'; matched with `StageWork.skills` and `Minding.skill`. */
  readonly skills: readonly string[]
  readonly ageClass: 'adult' | 'teen' | 'child'
  /** 'no-lifting': never loads or unloads a canner. 'seated': only prep, washing-up and labels at a seat. */
  readonly limits: readonly ('no-lifting' | 'seated' | 'large-print')[]
  readonly allergies: readonly string[]
  readonly languages: readonly string[]
  readonly from: KitchenTime
  readonly until: KitchenTime
}

export type PlanHousehold = { readonly id: string; readonly name: string; readonly allergies: readonly string[] }

/** Hands for one stage of a kettle batch. */
export type StageWork = {
  /** Person-minutes for one batch; for cooking and minding, minutes of one person. */
  readonly workMinutes: number
  /** Any one of these skills is enough. */
  readonly skills: readonly string[]
  readonly peopleMin: number
  readonly peopleMax: number
}

/** Minutes that a stage may really take; never below 0, low ≤ typical ≤ high. `basis`: printed by a publication, or what the trade plans with. */
export type MinuteRange = {
  readonly low: number
  readonly typical: number
  readonly high: number
  readonly basis: 'published' | 'common practice'
}

/** Stages whose length is not known beforehand; what is missing is taken from common practice, see `rangesOf`. */
export type StageRanges = {
  /** Person-minutes of one tested batch. */
  readonly prep?: MinuteRange
  readonly kettle?: MinuteRange
  /** From the last jar in to the boil, or to steam. */
  readonly comeUp?: MinuteRange
}

/** Heat on the jars and on the people who mind it; minutes. */
export type CannerCycle = {
  readonly loadMinutes: number
  /** Boiling water: back to a rolling boil. Pressure: to full steam, before venting. */
  readonly comeUpMinutes: number
  /** Pressure only; 0 otherwise. */
  readonly ventMinutes: number
  readonly pressuriseMinutes: number
  /** Boiling water: jars rest, lid off. Pressure: falls by itself. */
  readonly restMinutes: number
  /** Pressure only: wait after zero before the lid comes off. */
  readonly waitMinutes: number
  readonly unloadMinutes: number
}

/** The scheduled process of a preparation, as read from a published row. */
export type PlanProcess = {
  /** Minutes at the boil or at pressure: the published time or the longer time chosen under `chosenBecause`. */
  readonly minutes: number
  /** Minutes printed in the row. Never more than `minutes`. */
  readonly publishedMinutes: number
  readonly psi: number | null
  readonly rowKey: string
  /** Publication and section, as shown beside the minutes. */
  readonly source: string
  /** True when the jars must be boiled before filling because the process is under 10 minutes. */
  readonly sterilise: boolean
  /** Why `minutes` is longer than published; null when equal. */
  readonly chosenBecause: string | null
}

/** How empty jars are made ready. 'boiled-in-canner' costs canner minutes, 'boiled-in-pot' a pot and a burner. */
export type JarTreatment = 'washed-hot' | 'boiled-in-canner' | 'boiled-in-pot'

export type LeadStep = {
  readonly label: string
  readonly hours: number
  /** Done by then; null: before the first kettle of the preparation is needed. */
  readonly doneBy: KitchenTime | null
  readonly batchesPerTub: number
  /** Households that offered to do it; may be empty, then the plan proposes one. */
  readonly hostHouseholdIds: readonly string[]
}

export type PlanPreparation = {
  readonly id: string
  /** One letter on jars and charts, e.g. 'J'. */
  readonly code: string
  readonly title: string
  readonly recipeId: string
  /** How it is drawn; in older plans the library says it. */
  readonly pattern?: 'plum' | 'dill' | 'tomato' | 'peach' | 'bean'
  readonly method: Method
  readonly pack: Pack
  readonly jarSize: JarSize
  readonly jarsWanted: number
  /** Extra jars to plan for: a whole number of jars, or a share of the jars wanted (0.1 = one tenth, rounded up). */
  readonly spare: { readonly kind: 'jars'; readonly jars: number } | { readonly kind: 'share'; readonly share: number }
  /** Jars of `jarSize` one tested batch gives. */
  readonly batchYield: { readonly low: number; readonly typical: number; readonly high: number }
  readonly scaling: 'whole-batches-only' | 'to-kettle-volume'
  /** Litres of one tested batch in the kettle. */
  readonly batchLitres: number
  /** The pot it needs: 'any' kettle always serves. */
  readonly kettleUse: Exclude<KettleUse, 'jars' | 'any'>
  /** 'fill': what is cut is packed raw, the kettle only makes the brine. */
  readonly prepBefore: 'cook' | 'fill'
  readonly prep: StageWork
  /** 'hands-on': the cook does nothing else. 'watch': may also mind a boiling-water canner. */
  readonly cook: StageWork & { readonly attention: 'hands-on' | 'watch' }
  readonly fill: StageWork
  /** Washing jars hot, before filling. */
  readonly wash: StageWork
  /** Making labels out, any time in the evening. */
  readonly label: StageWork
  readonly kettleMinutes: number
  /** Longest wait from the end of cooking to the start of filling. */
  readonly cookedToFillingLimitMinutes: number
  /** Longest wait from the last jar filled to the load, minutes; common practice 15 when the recipe says nothing. */
  readonly filledToLoadedLimitMinutes: number
  readonly leadSteps: readonly LeadStep[]
  readonly allergens: readonly string[]
  readonly process: PlanProcess
  readonly jarTreatment: JarTreatment
  /** Minutes the empty jars boil when the treatment boils them. */
  readonly jarBoilMinutes: number
  readonly cycle: CannerCycle
  /** The canners that it may go into, of those of its method; undefined means all of them. */
  readonly onlyCannerIds?: readonly string[]
  /** All its loads begin by then, where the produce does not keep; undefined means any time. */
  readonly loadBy?: KitchenTime
  /** Other published ways to put it up in this kitchen. */
  readonly alternatives?: readonly PlanAlternative[]
  /** How long prep, cooking and come-up may really take; the plan itself runs on the single figures above. */
  readonly ranges?: StageRanges
  /** The usual figures, where the plan was asked to run on slower ones so that it ends in time more surely. */
  readonly usualMinutes?: { readonly prep: number; readonly kettle: number; readonly comeUp: number }
}

/** What kettles, tables and hands do for a product, whatever becomes of its jars. */
export type KettleWork = Pick<
  PlanPreparation,
  | 'id'
  | 'code'
  | 'title'
  | 'recipeId'
  | 'pattern'
  | 'jarSize'
  | 'jarsWanted'
  | 'spare'
  | 'batchYield'
  | 'scaling'
  | 'batchLitres'
  | 'kettleUse'
  | 'prepBefore'
  | 'prep'
  | 'cook'
  | 'fill'
  | 'wash'
  | 'label'
  | 'kettleMinutes'
  | 'cookedToFillingLimitMinutes'
  | 'leadSteps'
  | 'allergens'
  | 'jarTreatment'
  | 'jarBoilMinutes'
>

/**
 * Another published way to put the same food up: in a pressure canner, or in other jars. Offered as a way out, never chosen by itself.
 *
 * `gauge`: pressure only; the process holds for canners with this gauge alone.
 */
export type PlanAlternative = Pick<
  PlanPreparation,
  'method' | 'jarSize' | 'process' | 'jarTreatment' | 'jarBoilMinutes' | 'cycle' | 'batchYield' | 'fill' | 'wash' | 'label'
> & { readonly gauge: Gauge | null }

/** Who may mind the canners of one method, and how many at once. */
export type Minding = {
  readonly method: Method
  readonly skill: string
  readonly cannersAtOnce: number
  /** 'kettles': may watch a kettle too (never fill or cut). 'nothing': stays at the canner for the whole load. */
  readonly alongside: 'kettles' | 'nothing'
}

/** What a hand-made lock can hold: a load at its canner, cooking, filling, preparing or jar washing of one kettle batch. */
export const LOCKED_TASKS = ['load', 'cook', 'fill', 'prep', 'wash'] as const
export type LockedTask = (typeof LOCKED_TASKS)[number]

/**
 * A task that somebody fixed by hand: the planner plans round it or refuses and names it. At least one of minute, equipment and person is set.
 *
 * Batches are named by preparation and number, because codes follow the order of cooking and would move with it.
 */
export type PlanLock = {
  readonly preparationId: string
  /** Kettle batch of the preparation, counted from 1 as in the batch's id. */
  readonly batch: number
  /** 'load' is the load that the batch goes into; of several loads the first. */
  readonly task: LockedTask
  /** Starts at this minute. */
  readonly at: KitchenTime | null
  /** Canner of a load, kettle of cooking. */
  readonly equipmentId: string | null
  /** Who minds the load, or is in the team of the task. */
  readonly personId: string | null
}

/** Rest for people; minutes. */
export type BreakRule = {
  /** Whoever is there longer than this has a break, two when there longer than twice this, and so on. */
  readonly longerThanMinutes: number
  /** Of one break. */
  readonly minutes: number
  /** Nobody works longer than this without a pause of 10 minutes. */
  readonly longestStretchMinutes: number
}

/** Everything the planner may know about one session. Plain data, the same on server, phone and in tests. */
export type DayProblem = {
  readonly dayId: string
  readonly window: DayWindow
  readonly kettles: readonly PlanKettle[]
  readonly canners: readonly PlanCanner[]
  readonly burners: readonly PlanBurner[]
  readonly circuits: readonly PlanCircuit[]
  /** Jars the cooling space holds; null when it was not counted. */
  readonly rackJars: number | null
  readonly fillTables: number
  /** Minutes to wash a fill table between food with an allergen and food without it; undefined or 0: not planned. */
  readonly tableWashMinutes?: number
  readonly people: readonly PlanPerson[]
  readonly households: readonly PlanHousehold[]
  readonly minding: readonly Minding[]
  /** Undefined: common practice, see `COMMON_BREAKS`; null: no breaks are planned. */
  readonly breaks?: BreakRule | null
  readonly preparations: readonly PlanPreparation[]
  /** Products without a process: cooked and filled like every other; their jars go to the fridge or the freezer, and no canner takes them. */
  readonly chilled?: readonly KettleWork[]
  /** Tasks fixed by hand; none when left out. */
  readonly locks?: readonly PlanLock[]
}
