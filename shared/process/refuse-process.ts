import { publishedAlternatives } from './alternatives'
import type { Food, FoodNameProblem } from './food-names'
import type { GaugeProblem } from './gauge-rule'
import type { HazardId } from './hazards'
import { type CannerKind, largestJarFor, packsFor, type ReadyLine } from './process-index'
import type { Preparation, ProcessQuery, UnsafeMethod } from './process-query'
import type { ProcessRefusal, PublishedAlternative } from './process-refusal'
import type { Band } from './published-row'
import { UNVERIFIED_ROWS } from './unverified-rows'

/** A look-up as far as it came: the food found, its canner and whole feet where they are known. */
export type Asked = {
  readonly food: Food
  readonly canner: CannerKind | null
  readonly query: ProcessQuery
  readonly feet: number | null
}

/** A look-up that has its canner and its elevation. */
export type AskedOfCanner = Asked & { readonly canner: CannerKind; readonly feet: number }

const HAZARD_OF_METHOD: Readonly<Record<UnsafeMethod, HazardId>> = {
  'open-kettle': 'open-kettle',
  oven: 'oven',
  microwave: 'oven',
  dishwasher: 'oven',
  'multi-cooker': 'multi-cooker',
  'canning-powder': 'canning-powder',
  'jar-inversion': 'jar-inversion',
}

/** The name means no food of the tables, or several, or one that is never canned. */
export function refuseName(asked: string, problem: FoodNameProblem): ProcessRefusal {
  const base = { food: asked, alternatives: [], hazards: ['tested-recipe-only'] as const }
  switch (problem.kind) {
    case 'unknown':
      return { ...base, code: 'food-unknown', nearest: problem.nearest }
    case 'ambiguous':
      return { ...base, code: 'food-ambiguous', candidates: problem.candidates }
    default:
      return { ...base, code: 'food-never-canned', hazards: [problem.kind] }
  }
}

/** The method is one that guidance warns of. */
export function refuseUnsafeMethod(asked: Asked): ProcessRefusal {
  const { food, query } = asked
  const method = query.method as UnsafeMethod
  return {
    code: 'method-never-safe',
    food: food.name,
    method,
    alternatives: nearest(asked),
    hazards: [HAZARD_OF_METHOD[method]],
  }
}

/** The way the food was made ready leaves the tested recipe; null when it does not. */
export function refusePreparation(
  food: Food,
  { untestedThickener, batchesInOneKettle = 1, kettleMetal }: Preparation,
): ProcessRefusal | null {
  const base = { food: food.name, alternatives: [] }
  if (untestedThickener === true) return { ...base, code: 'thickener-untested', hazards: ['untested-thickener'] }
  if (batchesInOneKettle > 1 && isGelled(food))
    return { ...base, code: 'batch-multiplied', batches: batchesInOneKettle, hazards: ['doubled-jelly-batch'] }
  if (kettleMetal === 'aluminium' && food.acidity !== 'low-acid')
    return { ...base, code: 'aluminium-with-acid', hazards: ['aluminium-with-acid'] }
  return null
}

/** Jams, jellies, preserves and marmalades set by pectin, sugar and acid, so their batches are never multiplied. */
export const isGelled = ({ id }: Pick<Food, 'id'>): boolean => /jam|jelly|preserves|marmalade|spread/.test(id)

/** Low-acid food outside a pressure canner, or pressure without its gauge. */
export function refuseCanner(asked: Asked): ProcessRefusal {
  const { food, query } = asked
  const base = { food: food.name, alternatives: nearest(asked) }
  if (query.method === 'pressure') return { ...base, code: 'gauge-needed', hazards: [] }
  const code = query.method === 'boiling-water' ? 'low-acid-needs-pressure' : 'steam-acid-only'
  return { ...base, code, hazards: ['low-acid-in-boiling-water'] }
}

/** Nobody has said how high the kitchen stands. */
export const refuseUnknownElevation = (food: Food): ProcessRefusal => ({
  code: 'elevation-unknown',
  food: food.name,
  alternatives: [],
  hazards: ['local-elevation'],
})

/** No table prints a band below sea level. */
export const refuseBelowTables = (food: Food, feet: number): ProcessRefusal => ({
  code: 'elevation-below-tables',
  food: food.name,
  feet,
  alternatives: [],
  hazards: [],
})

/** Nothing is printed for this canner, pack or jar. */
export function refuseLine(asked: AskedOfCanner): ProcessRefusal {
  const { food, canner, query } = asked
  const base = { food: food.name, alternatives: nearest(asked), hazards: [] }
  const packs = packsFor(food.id, canner)
  if (packs.length === 0) return refuseMethod(asked, base.alternatives)
  const pack = query.pack ?? packs.find((each) => packsFor(food.id, canner, query.jar).includes(each))
  if (query.pack !== null && !packs.includes(query.pack)) return { ...base, code: 'pack-not-published', pack: query.pack }
  if (query.jar === 'half-gallon') return { ...base, code: 'jar-half-gallon-juice-only', hazards: ['half-gallon-jar'] }
  if (query.pack === null && pack !== undefined) return { ...base, code: 'pack-needed', packs }
  return { ...base, code: 'jar-larger-than-published', jar: query.jar, largest: largestJarFor(food.id, canner) }
}

function refuseMethod(
  { food, canner, query: { method, gauge } }: AskedOfCanner,
  alternatives: readonly PublishedAlternative[],
): ProcessRefusal {
  const base = { food: food.name, alternatives, hazards: [] }
  const held = UNVERIFIED_ROWS.find(
    (row) => row.foodId === food.id && (row.gauge ?? row.method) === (canner === 'atmospheric-steam' ? 'boiling-water' : canner),
  )
  if (held !== undefined) return { ...base, code: 'no-verified-process', lookIn: held.lookIn }
  return { ...base, code: 'method-not-published', method: method as Exclude<typeof method, UnsafeMethod>, gauge }
}

/** The table prints other pressures than the one asked for. */
export const refuseOption = (food: Food, option: number, lines: readonly ReadyLine[]): ProcessRefusal => ({
  code: 'option-not-published',
  food: food.name,
  option,
  options: lines.flatMap((line) => (line.option === null ? [] : [line.option])),
  alternatives: [],
  hazards: [],
})

/** The table ends below this elevation, prints a refusal here, or passes the limit of steam canners. */
export function refuseBand(asked: AskedOfCanner, { row, bands }: ReadyLine, band: Band | undefined): ProcessRefusal {
  const { food, feet } = asked
  const base = { food: food.name, alternatives: nearest(asked), hazards: [] }
  if (band === undefined) {
    const highestFeet = Math.max(...bands.map((each) => Number(each.band.maxFeet)))
    return {
      ...base,
      code: 'elevation-above-tables',
      feet,
      highestFeet,
      because: row.closesAt8000Feet ?? null,
      hazards: ['local-elevation'],
    }
  }
  if (band.minutes !== null) return { ...base, code: 'steam-over-45-minutes', minutes: band.minutes }
  return { ...base, code: 'not-recommended-here', band: band.printed }
}

/** The dial gauge cannot be trusted. */
export function refuseGauge(asked: AskedOfCanner, problem: GaugeProblem): ProcessRefusal {
  const alternatives = nearest(asked).filter(({ gauge }) => gauge !== 'dial')
  const base = { food: asked.food.name, alternatives, hazards: [] }
  if (problem.kind === 'untested') return { ...base, code: 'gauge-untested' }
  if (problem.kind === 'expired') return { ...base, code: 'gauge-test-expired', testedOn: problem.testedOn }
  return { ...base, code: 'gauge-error-too-large', errorPsi: problem.errorPsi }
}

function nearest({ food, canner, query: { pack, jar }, feet }: Asked): PublishedAlternative[] {
  return feet === null ? [] : publishedAlternatives({ foodId: food.id, canner, pack, jar }, feet)
}
