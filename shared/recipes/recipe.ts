import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'
import type { Source } from '@/shared/process/published-row'
import type { ConfirmedCondition } from '@/shared/recipes/own-recipe'
import type { UnitId } from '@/shared/units/units'

/** Jars of one size: the range a publication or a log gives. */
export type JarYield = { readonly low: number; readonly typical: number; readonly high: number }

/** Minutes as a range; `basis` says whether a publication prints them, or the trade (or the group that wrote the recipe) plans with them. */
export type WorkMinutes = {
  readonly low: number
  readonly typical: number
  readonly high: number
  readonly basis: 'published' | 'common practice'
}

/** One line of a recipe. `amount` is a number, or a printed range. `per` says what it is reckoned on; the batch when absent. */
export type Ingredient = {
  readonly item: string
  readonly amount: number | { readonly low: number; readonly high: number }
  readonly unit: UnitId
  readonly per?: 'cup of juice' | 'pound of fruit'
  readonly optional?: true
}

/** Work that must be done before the day's own stages, such as a soak. */
export type LeadStep = { readonly label: string; readonly hours: number; readonly where: string }

/** How the fruit or vegetable is drawn on charts and labels. */
export type ProducePattern = 'plum' | 'dill' | 'tomato' | 'peach' | 'bean'

/** The published process that the jars of a recipe are bound to; its minutes are looked up, never stored here. */
export type ProcessBinding = { readonly foodId: string; readonly pack: Pack; readonly method: Method; readonly gauge: Gauge | null }

/** Raw produce for one full canner of one jar size, in pounds. */
export type LoadWeight = { readonly jar: JarSize; readonly jars: number; readonly pounds: number }

/** A tested recipe as the app uses it. */
export type Recipe = {
  readonly id: string
  /** Other ids under which the same recipe is known. */
  readonly alsoKnownAs: readonly string[]
  readonly title: string
  /** The letter that jars and charts of a day prefer; see assignProductLetters for a day with two of the same. */
  readonly productLetter: string
  readonly pattern: ProducePattern
  readonly source: Source
  /** Null when no verified process is held: its jars go to the fridge or the freezer and are never called shelf-stable. */
  readonly process: ProcessBinding | null
  readonly jars: readonly JarSize[]
  readonly defaultJar: JarSize
  /** Jars of `jar` that one batch gives. */
  readonly batch: { readonly jar: JarSize; readonly yield: JarYield; readonly produce: string; readonly producePounds: number | null }
  /** What one batch gives in other jars, where somebody counted it; by volume where not. */
  readonly yields?: Readonly<Partial<Record<JarSize, JarYield>>>
  /** Of a group's own recipe: its version, and the conditions of the process that were confirmed. No minutes without all of them. */
  readonly own?: { readonly version: number; readonly confirmed: readonly ConfirmedCondition[] }
  /** Litres of one batch in the kettle at its fullest: measured volumes together, or the filled jars where that is more. */
  readonly batchLitres: number
  readonly loadWeights: readonly LoadWeight[]
  readonly ingredients: readonly Ingredient[]
  /** 'key-only': the source was read in part, spices may be missing; read the full recipe before buying and for allergens. */
  readonly ingredientList: 'complete' | 'key-only'
  /** Jam, jelly, pickles and sauces are cooked in whole tested batches; plain packs fill the kettle. */
  readonly scaling: 'whole-batches-only' | 'to-kettle-volume'
  readonly allergens: readonly string[]
  readonly leadSteps: readonly LeadStep[]
  readonly kettleUse: 'jam' | 'brine' | 'cook'
  /** 'fill': what is cut is packed raw and the kettle only heats the liquid. */
  readonly prepBefore: 'cook' | 'fill'
  /** Person-minutes of cutting and measuring for one batch; null until somebody has timed it. */
  readonly prepMinutes: WorkMinutes | null
  /** Minutes one batch holds the kettle; null until somebody has timed it. */
  readonly kettleMinutes: WorkMinutes | null
  /** Person-minutes of filling, wiping and lidding one batch. */
  readonly fillMinutes: WorkMinutes
  /** Acid food in a bare aluminium kettle is refused. */
  readonly acidFood: boolean
  readonly notes: readonly string[]
}
