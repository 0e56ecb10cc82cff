import type { Pack } from '@/shared/kitchen/methods'
import { type AlternativeSearch, publishedAlternatives } from './alternatives'
import type { Food, FoodNameProblem } from './food-names'
import type { GaugeProblem } from './gauge-rule'
import type { HazardId } from './hazards'
import { type CannerKind, largestJarFor, packsFor, type ReadyLine } from './process-index'
import type { Preparation, ProcessQuery, UnsafeMethod } from './process-query'
import type { ProcessRefusal, PublishedAlternative } from './process-refusal'
import type { Band } from './published-row'
import { UNVERIFIED_ROWS } from './unverified-rows'

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
export function refuseUnsafeMethod(food: Food, query: ProcessQuery, feet: number | null): ProcessRefusal {
  const method = query.method as UnsafeMethod
  return {
    code: 'method-never-safe',
    food: food.name,
    method,
    alternatives: nearest(food, null, query, feet),
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
export function refuseCanner(food: Food, query: ProcessQuery, feet: number | null): ProcessRefusal {
  const base = { food: food.name, alternatives: nearest(food, null, query, feet) }
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
export function refuseLine(food: Food, canner: CannerKind, query: ProcessQuery, feet: number): ProcessRefusal {
  const base = { food: food.name, alternatives: nearest(food, canner, query, feet), hazards: [] }
  const packs = packsFor(food.id, canner)
  if (packs.length === 0) return refuseMethod(food, canner, query, base.alternatives)
  const pack = query.pack ?? packs.find((each) => packsFor(food.id, canner, query.jar).includes(each))
  if (query.pack !== null && !packs.includes(query.pack)) return { ...base, code: 'pack-not-published', pack: query.pack }
  if (query.jar === 'half-gallon') return { ...base, code: 'jar-half-gallon-juice-only', hazards: ['half-gallon-jar'] }
  if (query.pack === null && pack !== undefined) return { ...base, code: 'pack-needed', packs }
  return { ...base, code: 'jar-larger-than-published', jar: query.jar, largest: largestJarFor(food.id, canner, query.pack) }
}

function refuseMethod(
  food: Food,
  canner: CannerKind,
  { method, gauge }: ProcessQuery,
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
export function refuseBand(
  food: Food,
  { row, bands }: ReadyLine,
  band: Band | undefined,
  canner: CannerKind,
  query: ProcessQuery,
  feet: number,
): ProcessRefusal {
  const base = { food: food.name, alternatives: nearest(food, canner, query, feet), hazards: [] }
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
export function refuseGauge(food: Food, query: ProcessQuery, feet: number, problem: GaugeProblem): ProcessRefusal {
  const base = { food: food.name, alternatives: nearest(food, 'dial', query, feet).filter(({ gauge }) => gauge !== 'dial'), hazards: [] }
  if (problem.kind === 'untested') return { ...base, code: 'gauge-untested' }
  if (problem.kind === 'expired') return { ...base, code: 'gauge-test-expired', testedOn: problem.testedOn }
  return { ...base, code: 'gauge-error-too-large', errorPsi: problem.errorPsi }
}

function nearest(
  food: Food,
  canner: AlternativeSearch['canner'],
  { pack, jar }: { pack: Pack | null; jar: AlternativeSearch['jar'] },
  feet: number | null,
): PublishedAlternative[] {
  return feet === null ? [] : publishedAlternatives({ foodId: food.id, canner, pack, jar }, feet)
}
