/** A day in the form `canning-day/1`: times are whole minutes after opening, multiples of `grid`; batches and their trays are given. */
export type CanningDay = {
  readonly format: 'canning-day/1'
  readonly id: string
  readonly grid: number
  /** Minutes from opening to closing. */
  readonly close: number
  readonly jarSizes: readonly { readonly id: string; readonly ml: number }[]
  readonly kettles: readonly { readonly id: string; readonly ml: number }[]
  readonly burners: number
  /** Kettles that can be minded at once, from cook start to fill end. */
  readonly stoveWatch: number
  readonly prepPlaces: number
  readonly fillStations: number
  readonly canners: readonly {
    readonly id: string
    readonly method: 'boiling-water' | 'pressure'
    readonly jars: Readonly<Record<string, number>>
  }[]
  readonly operators: readonly { readonly id: string; readonly from: number; readonly to: number; readonly maxCanners: number }[]
  readonly crews: readonly DayCrew[]
  readonly handling: { readonly loadMinutes: number; readonly unloadMinutes: number; readonly people: number; readonly skill: CrewSkill }
  readonly families: readonly DayFamily[]
  readonly recipes: readonly {
    readonly id: string
    readonly name: string
    readonly family: string
    readonly maxBatchMl: number | null
    readonly demandJars: number
  }[]
  readonly batches: readonly DayBatch[]
  readonly coolingJars: number
}

export const CREW_SKILLS = ['prep', 'knife', 'hot'] as const
export type CrewSkill = (typeof CREW_SKILLS)[number]

/** People with the same hours and skills who take their break together. */
export type DayCrew = {
  readonly id: string
  readonly people: readonly string[]
  readonly from: number
  readonly to: number
  readonly skills: readonly CrewSkill[]
  readonly break: { readonly minutes: number; readonly startMin: number; readonly startMax: number } | null
}

/** What may share a canner load: one method, jar size, pack and process time. */
export type DayFamily = {
  readonly id: string
  readonly method: 'boiling-water' | 'pressure'
  readonly jarSize: string
  readonly heatMinutes: number
  readonly processMinutes: number
  readonly restMinutes: number
}

export type DayBatch = {
  readonly id: string
  readonly recipe: string
  readonly ml: number
  readonly jars: number
  readonly readyAt: number
  readonly prep: { readonly work: number; readonly skill: CrewSkill; readonly peopleMin: number; readonly peopleMax: number }
  readonly maxWaitPrepCook: number | null
  readonly cook: { readonly low: number; readonly minutes: number; readonly high: number }
  readonly maxWaitCookFill: number
  readonly fill: { readonly minutes: number; readonly people: number; readonly skill: CrewSkill }
  readonly kettleTurn: number
  /** Jars a tray; a tray is never divided. */
  readonly trays: readonly number[]
  readonly maxWaitFillProcess: number
}

/** A plan in the form `canning-plan/1`, with the bound and the gap it is proved within. */
export type CanningPlan = {
  readonly format: 'canning-plan/1'
  readonly instance: string
  readonly batches: readonly {
    readonly id: string
    readonly prep: { readonly start: number; readonly people: readonly string[] }
    readonly cook: { readonly kettle: string; readonly start: number }
    readonly fill: { readonly start: number; readonly people: readonly string[] }
  }[]
  readonly loads: readonly {
    readonly id: string
    readonly canner: string
    readonly start: number
    readonly trays: readonly (readonly [batchId: string, tray: number])[]
    readonly loadPeople: readonly string[]
    readonly unloadPeople: readonly string[]
    readonly operator?: string
  }[]
  readonly breaks: readonly { readonly crew: string; readonly start: number }[]
  /** The last jar out, minutes after opening. */
  readonly makespan: number
  /** No plan of this day ends earlier. */
  readonly lowerBound: number
  /** (makespan − lowerBound) ÷ lowerBound; 0 is proved best. */
  readonly gap: number
}
