import type { CanningDay, DayBatch, DayFamily } from '@/shared/scheduling/day/canning-day'
import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import { emptyState, takeBack } from '@/shared/scheduling/day/day-state'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import type { Bound } from '@/shared/scheduling/energy-bound'
import { insertBatch, type Manner } from '@/shared/scheduling/day/insert-batch'

/** One reason why no plan of a day can exist, in a sentence that names the limit. */
export type DayImpossible = { readonly reason: string }

/**
 * Reasons that make a day impossible whatever the timetable; empty when none was found, which does not promise a plan.
 *
 * Looks at each batch alone in an empty kitchen, at the jars to cool, and at the bound.
 */
export function impossibleReasons(model: DayModel, bound: Bound = finishBound(model)): DayImpossible[] {
  const { day } = model
  const alone = day.batches.flatMap((batch, index) => batchReason(day, batch, `batches[${index}]`) ?? [])
  if (alone.length > 0) return alone.slice(0, 10).map((reason) => ({ reason }))
  const jars = day.batches.flatMap((batch) => batch.trays).reduce((sum, tray) => sum + tray, 0)
  if (jars > day.coolingJars) return [{ reason: `${jars} jars have to cool, there is room for ${day.coolingJars} (coolingJars)` }]
  if (bound.slot > model.slots) {
    return [{ reason: `${bound.because}: the work ends at minute ${bound.slot * day.grid} at the earliest, closing is at ${day.close}` }]
  }
  return hopelessBatches(model)
}

function batchReason(day: CanningDay, batch: DayBatch, at: string): string | null {
  const recipe = day.recipes.find((entry) => entry.id === batch.recipe)
  const family = day.families.find((entry) => entry.id === recipe?.family)
  if (!recipe || !family) return `${at}.recipe: ${batch.id} is of no recipe and family of this day`
  if (recipe.maxBatchMl !== null && batch.ml > recipe.maxBatchMl)
    return `${at}.ml: ${batch.id} is ${batch.ml} ml, the tested maximum of ${recipe.id} is ${recipe.maxBatchMl} ml`
  const kettle = Math.max(0, ...day.kettles.map((entry) => entry.ml))
  if (batch.ml > kettle) return `${at}.ml: ${batch.id} is ${batch.ml} ml, the largest kettle holds ${kettle} ml`
  return cannerReason(day, batch, family, at) ?? peopleReason(day, batch, at)
}

function cannerReason(day: CanningDay, batch: DayBatch, family: DayFamily, at: string): string | null {
  const canners = day.canners.filter((canner) => canner.method === family.method)
  if (canners.length === 0) return `canners: ${batch.id} needs a ${family.method} canner and there is none`
  const holds = Math.max(0, ...canners.map((canner) => canner.jars[family.jarSize] ?? 0))
  const tray = Math.max(...batch.trays)
  if (tray > holds)
    return `${at}.trays: ${batch.id} has a tray of ${tray} ${family.jarSize} jars, no ${family.method} canner holds more than ${holds}`
  if (family.method === 'pressure' && !day.operators.some((one) => one.maxCanners > 0 && one.to > one.from))
    return `operators: ${batch.id} needs a pressure operator and there is none`
  return null
}

function peopleReason(day: CanningDay, batch: DayBatch, at: string): string | null {
  const withSkill = (skill: string) =>
    day.crews.filter((crew) => crew.skills.some((has) => has === skill)).reduce((sum, crew) => sum + crew.people.length, 0)
  const short = (field: string, what: string, skill: string, needed: number) =>
    withSkill(skill) < needed
      ? `${field}: ${batch.id} needs ${needed} people with ${skill} to ${what}, there are ${withSkill(skill)}`
      : null
  const places =
    day.prepPlaces < batch.prep.peopleMin
      ? `prepPlaces: ${batch.id} needs ${batch.prep.peopleMin} prep places, there are ${day.prepPlaces}`
      : null
  return (
    short(`${at}.prep.peopleMin`, 'prepare', batch.prep.skill, batch.prep.peopleMin) ??
    short(`${at}.fill.people`, 'fill', batch.fill.skill, batch.fill.people) ??
    short('handling.people', 'load', day.handling.skill, day.handling.people) ??
    places
  )
}

function withLargestTray(batch: ModelBatch): ModelBatch {
  const jars = Math.max(...batch.trays)
  return { ...batch, trays: [jars], trayOrder: [0], jars }
}

/** On larger days this would keep the first plan waiting; there, batches that found no place are named at the end. */
const MOST_TRIED_ALONE = 400

/**
 * Batches of which not even the largest tray alone finds a place in an empty kitchen where nobody takes a break. With one tray every start,
 * team and canner is tried, so that is certain; but for work that takes no time.
 */
function hopelessBatches(whole: DayModel): DayImpossible[] {
  if (whole.hasMoments || whole.batches.length > MOST_TRIED_ALONE) return []
  const model: DayModel = {
    ...{ ...whole, batches: whole.batches.map(withLargestTray) },
    crews: whole.crews.map((crew) => ({ ...crew, breakLength: 0 })),
  }
  const all = model.batches.map(({ index }) => index)
  const hopeless = placeless(model, all).slice(0, 10)
  if (hopeless.length === 0) return []
  const allDay = { from: 0, to: model.slots }
  const tied = new Set(placeless({ ...model, operators: model.operators.map((one) => ({ ...one, ...allDay })) }, hopeless))
  const short = new Set(placeless({ ...model, crews: model.crews.map((one) => ({ ...one, ...allDay })) }, hopeless))
  return hopeless.map((index) => {
    const id = model.day.batches[index]?.id ?? ''
    const minutes = (model.batches[index]?.tail ?? 0) * model.day.grid
    if (!tied.has(index))
      return { reason: `operators: a load of ${id} takes ${minutes} min, and no operator is on duty so long when it can run` }
    if (!short.has(index)) return { reason: `crews: the people that ${id} needs are not all there in the minutes in which it can be made` }
    return { reason: `${id} finds no time between opening and closing, even alone in the kitchen` }
  })
}

/** Those of these batches that fit nowhere, each alone in the kitchen. */
function placeless(model: DayModel, indices: readonly number[]): number[] {
  const { slots: limit, crewsWith } = model
  const manner: Manner = { limit, crewsWith, fromEnd: false, blink: 0, joinFirst: false, prepLate: false, isStray: true, random: () => 0 }
  const state = emptyState(model)
  return indices.filter((index) => {
    const fits = insertBatch(state, index, manner)
    takeBack(state, 0)
    return !fits
  })
}
