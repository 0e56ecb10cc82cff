import { cannerCycle } from '@/shared/day/canner-cycle'
import { type ChosenProcess, sourceLine } from '@/shared/day/choose-process'
import type { JarTreatmentName } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import type {
  JarTreatment,
  KettleWork,
  LeadStep,
  PlanPreparation,
  PlanProcess,
  StageRanges,
  StageWork,
} from '@/shared/planning/day-problem'
import type { JarYield, Recipe, WorkMinutes } from '@/shared/recipes/recipe'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A product of a day, as far as the planner needs it. */
export interface DayProduct {
  readonly id: string
  readonly recipe: Recipe
  readonly letter: string
  readonly jarSize: JarSize
  readonly method: Method
  readonly jarTreatment: JarTreatmentName
  readonly claimed: number
  readonly spareJars: number
}

/** Around the product: when soaks must be done, and who offered to do them, by step label in lower case. */
export interface DaySetting {
  readonly soakedBy: KitchenTime
  readonly hosts: ReadonlyMap<string, readonly string[]>
}

/** The same with the process that the product is put up by. */
export interface ProductSetting extends DaySetting {
  readonly process: ChosenProcess
}

/** Pounds of produce one person makes ready in an hour, until the recipe has been timed: the slowest planning figure (common practice). */
const POUNDS_PER_PERSON_HOUR = 8

/** Minutes one batch holds the kettle until the recipe has been timed (common practice). */
const UNTIMED_KETTLE_MINUTES = 30

/** Filling, washing or labelling one jar takes about a person-minute (common practice). */
const MINUTES_PER_JAR = 1

/** Filled jars wait this long at most before they are loaded (common practice). */
const FILLED_TO_LOADED_MINUTES = 15

/** What is cooked goes into jars within this (common practice). */
const COOKED_TO_FILLING_MINUTES = 5

/** A tub for soaking holds two tested batches (common practice). */
const BATCHES_PER_TUB = 2

/** What a product asks of the day, in the planner's words. */
export function planPreparation(product: DayProduct, { process, ...setting }: ProductSetting): PlanPreparation {
  const { method } = product
  const pack = product.recipe.process?.pack ?? 'hot'
  return {
    ...kettleWork(product, setting),
    method,
    pack,
    filledToLoadedLimitMinutes: FILLED_TO_LOADED_MINUTES,
    process: planProcess(process),
    jarTreatment: TREATMENTS[product.jarTreatment],
    jarBoilMinutes: process.jarBoilMinutes,
    cycle: cannerCycle(method, pack, product.jarSize),
    ranges: rangesOfRecipe(product.recipe),
  }
}

/**
 * What a product without a process asks of the day: everything but a canner.
 *
 * Its clean jars are washed hot; nothing is boiled to make them keep, because they keep in the cold alone.
 */
export function kettleWork(
  { recipe, ...product }: Omit<DayProduct, 'method' | 'jarTreatment'>,
  { soakedBy, hosts }: DaySetting,
): KettleWork {
  const batchYield = yieldInJars(recipe, product.jarSize)
  return {
    id: product.id,
    code: product.letter,
    title: recipe.title,
    recipeId: recipe.id,
    pattern: recipe.pattern,
    jarSize: product.jarSize,
    jarsWanted: product.claimed,
    spare: { kind: 'jars', jars: product.spareJars },
    batchYield,
    scaling: recipe.scaling,
    batchLitres: recipe.batchLitres,
    kettleUse: recipe.kettleUse,
    prepBefore: recipe.prepBefore,
    ...handsFor(recipe, batchYield),
    kettleMinutes: recipe.kettleMinutes?.typical ?? UNTIMED_KETTLE_MINUTES,
    cookedToFillingLimitMinutes: COOKED_TO_FILLING_MINUTES,
    leadSteps: recipe.leadSteps.map((step) => leadStep(step, soakedBy, hosts)),
    allergens: recipe.allergens,
    jarTreatment: 'washed-hot',
    jarBoilMinutes: 0,
  }
}

/** What the recipe says of its own spread; a stage of which it gives none is left to the planner's common practice. */
function rangesOfRecipe({ prepMinutes: prep, kettleMinutes: kettle }: Recipe): StageRanges {
  return { ...(prep && saysItsSpread(prep) ? { prep } : {}), ...(kettle && saysItsSpread(kettle) ? { kettle } : {}) }
}

/** A single planning figure of the trade says nothing of how far it strays; a printed one is kept to. */
const saysItsSpread = ({ low, high, basis }: WorkMinutes): boolean => basis === 'published' || low < high

const TREATMENTS: Readonly<Record<JarTreatmentName, JarTreatment>> = {
  'washed-hot': 'washed-hot',
  'boiled-in-pot': 'boiled-in-pot',
  'boiled-in-canners': 'boiled-in-canner',
}

function handsFor(recipe: Recipe, batchYield: JarYield): Pick<PlanPreparation, 'prep' | 'cook' | 'fill' | 'wash' | 'label'> {
  const { kettleUse, batch } = recipe
  const untimed = Math.ceil(((batch.producePounds ?? 0) * 60) / POUNDS_PER_PERSON_HOUR)
  const kettleMinutes = recipe.kettleMinutes?.typical ?? UNTIMED_KETTLE_MINUTES
  const perJar = batchYield.typical * MINUTES_PER_JAR
  return {
    prep: hands(recipe.prepMinutes?.typical ?? untimed, ['prep', kettleUse], 4),
    cook: { ...hands(kettleMinutes, [kettleUse, 'cook'], 1), attention: kettleUse === 'brine' ? 'watch' : 'hands-on' },
    fill: hands(recipe.fillMinutes.typical, ['fill', kettleUse, 'station-lead'], 2),
    wash: hands(perJar, ['wash', 'prep'], 1),
    label: hands(perJar, ['labels', 'prep'], 1),
  }
}

const hands = (workMinutes: number, skills: readonly string[], peopleMax: number): StageWork => ({
  workMinutes,
  skills: [...new Set(skills)],
  peopleMin: 1,
  peopleMax,
})

const leadStep = (
  { label, hours }: Recipe['leadSteps'][number],
  doneBy: KitchenTime,
  hosts: ReadonlyMap<string, readonly string[]>,
): LeadStep => ({ label, hours, doneBy, batchesPerTub: BATCHES_PER_TUB, hostHouseholdIds: hosts.get(label.toLowerCase()) ?? [] })

function planProcess({ published, minutes, isLongerForJars }: ChosenProcess): PlanProcess {
  const needsBoiling = published.sterilise.required && !isLongerForJars
  return {
    minutes,
    publishedMinutes: published.minutes,
    psi: published.psi,
    rowKey: published.rowKey,
    source: sourceLine(published),
    sterilise: needsBoiling,
    chosenBecause: isLongerForJars ? `Run as ${minutes} min so that jars need no boiling first.` : null,
  }
}
