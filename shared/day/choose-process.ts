import type { JarTreatmentName } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { steriliseMinutes } from '@/shared/process/sterilising'
import { unconfirmedOf } from '@/shared/recipes/own-recipe'
import type { Recipe } from '@/shared/recipes/recipe'
import { ok, type Result, refuse } from '@/shared/result/result'

/** How a recipe is to be put up on a day. `elevationFeet` is the kitchen's. */
export interface ProcessWish {
  readonly recipe: Recipe
  readonly jarSize: JarSize
  readonly method: Method
  readonly gauge: Gauge | null
  readonly jarTreatment: JarTreatmentName
  readonly elevationFeet: number
}

/** The process that the day will run, with the published one it rests on. */
export interface ChosenProcess {
  readonly published: ScheduledProcess
  /** Minutes the day runs: the published ones, or the longer time after which jars need no boiling first. Never fewer. */
  readonly minutes: number
  /** Minutes the empty jars boil, at this elevation; needed only where the treatment boils them. */
  readonly jarBoilMinutes: number
  /** True when the minutes run are longer than published because jars are only washed. */
  readonly isLongerForJars: boolean
}

/** Why a recipe cannot be put up that way. */
export type ProcessChoiceProblem =
  | { readonly kind: 'no-process-held' }
  | { readonly kind: 'has-a-process' }
  | { readonly kind: 'jar-not-in-recipe'; readonly jars: readonly JarSize[] }
  | { readonly kind: 'jars-need-boiling'; readonly minutes: number; readonly jarBoilMinutes: number }
  | { readonly kind: 'conditions-open'; readonly statements: readonly string[] }
  | { readonly kind: 'refused'; readonly refusal: ProcessRefusal }

/**
 * Looks the published process up and settles how empty jars are made ready.
 *
 * Jars processed under 10 minutes must be boiled before they are filled; where the publication gives a longer time instead, washing
 * them hot chooses that time. Nothing is ever shortened. A group's own recipe gets minutes only when every condition of the very table
 * that answers here is confirmed: another elevation or jar may bring other conditions.
 */
export function chooseProcess(wish: ProcessWish): Result<ChosenProcess, ProcessChoiceProblem> {
  const { recipe, jarSize, method, gauge, jarTreatment, elevationFeet } = wish
  if (!recipe.process) return refuse({ kind: 'no-process-held' })
  if (!recipe.jars.includes(jarSize)) return refuse({ kind: 'jar-not-in-recipe', jars: recipe.jars })
  const { foodId, pack } = recipe.process
  const found = lookUpProcess({ food: foodId, pack, jar: jarSize, method, gauge, elevation: { feet: elevationFeet } })
  if (!found.ok) return refuse({ kind: 'refused', refusal: found.problem })
  const open = recipe.own ? unconfirmedOf(found.value, recipe.own.confirmed) : []
  if (open.length > 0) return refuse({ kind: 'conditions-open', statements: open.map(({ statement }) => statement) })

  const published = found.value
  const jarBoilMinutes = steriliseMinutes(Math.max(0, published.elevationFeet))
  const isWashedOnly = jarTreatment === 'washed-hot' && published.sterilise.required
  if (!isWashedOnly) return ok({ published, minutes: published.minutes, jarBoilMinutes, isLongerForJars: false })
  const longer = published.minutesWithoutSterilising
  if (longer === null) return refuse({ kind: 'jars-need-boiling', minutes: published.minutes, jarBoilMinutes })
  return ok({ published, minutes: Math.max(longer, published.minutes), jarBoilMinutes, isLongerForJars: longer > published.minutes })
}

/** "USDA Complete Guide to Home Canning, …, Guide 6, Table 1", as shown beside the minutes. */
export const sourceLine = ({ source }: Pick<ScheduledProcess, 'source'>): string => `${source.publication}, ${source.section}`
