import { ok, type Result, refuse } from '@/shared/result/result'
import { needleOffset } from './gauge-rule'
import { wholeFeet } from './elevation'
import { type Food, findFood } from './food-names'
import { type CannerKind, linesOf, packsFor, type ReadyLine, type ReadyLines } from './process-index'
import type { ProcessQuery } from './process-query'
import type { ProcessRefusal } from './process-refusal'
import {
  refuseBand,
  refuseBelowTables,
  refuseCanner,
  refuseGauge,
  refuseLine,
  refuseName,
  refuseOption,
  refusePreparation,
  refuseUnknownElevation,
  refuseUnsafeMethod,
} from './refuse-process'
import type { ScheduledProcess } from './scheduled-process'
import { steriliseMinutes } from './sterilising'

/**
 * The scheduled process for a food, pack, jar, canner and elevation, from published rows alone.
 *
 * Nothing is interpolated, extrapolated, shortened or invented. A jar smaller than the sizes listed goes at the next listed size's
 * time where published guidance allows it, a larger one never; a part of a foot counts as the next foot; where publications differ
 * above 8,000 ft the stricter one is used and named.
 *
 * @returns the printed process with its source, or the reason why there is none with the nearest published alternatives
 */
export function lookUpProcess(query: ProcessQuery): Result<ScheduledProcess, ProcessRefusal> {
  const found = findFood(query.food)
  if (!found.ok) return refuse(refuseName(query.food, found.problem))
  const food = found.value
  const feet = wholeFeet(query.elevation)

  const canner = cannerKind(query)
  if (canner === 'unsafe') return refuse(refuseUnsafeMethod({ food, canner: null, query, feet }))
  const unfit = query.preparation === undefined ? null : refusePreparation(food, query.preparation)
  if (unfit !== null) return refuse(unfit)
  if (canner === null || (food.acidity === 'low-acid' && query.method !== 'pressure'))
    return refuse(refuseCanner({ food, canner: null, query, feet }))
  if (feet === null) return refuse(refuseUnknownElevation(food))
  if (feet < 0) return refuse(refuseBelowTables(food, feet))

  const lines = linesFor(food, canner, query)
  if (lines === undefined) return refuse(refuseLine({ food, canner, query, feet }))
  if (query.option === undefined) return answer(food, lines[0], canner, query, feet)
  const line = lines.find(({ option }) => option === query.option)
  return line === undefined ? refuse(refuseOption(food, query.option, lines)) : answer(food, line, canner, query, feet)
}

/** The canner's kind; null when pressure is asked for without its gauge. */
function cannerKind({ method, gauge }: ProcessQuery): CannerKind | 'unsafe' | null {
  if (method === 'pressure') return gauge
  return method === 'boiling-water' || method === 'atmospheric-steam' ? method : 'unsafe'
}

/** Without a pack, the food's only one for this jar; of two, only when both print the same figures. */
function linesFor(food: Food, canner: CannerKind, { pack, jar }: ProcessQuery): ReadyLines | undefined {
  if (pack !== null) return linesOf(food.id, canner, pack, jar)
  const [first, second] = packsFor(food.id, canner, jar).map((each) => linesOf(food.id, canner, each, jar))
  return first === undefined || second === undefined || printSame(first, second) ? first : undefined
}

const printSame = (lines: readonly ReadyLine[], others: readonly ReadyLine[]): boolean => figures(lines) === figures(others)

const figures = (lines: readonly ReadyLine[]): string =>
  JSON.stringify(lines.map(({ bands }) => bands.map(({ band, process }) => [band, process?.headspaceInches])))

function answer(
  food: Food,
  line: ReadyLine,
  canner: CannerKind,
  query: ProcessQuery,
  feet: number,
): Result<ScheduledProcess, ProcessRefusal> {
  const ready = line.bands.find(({ band }) => band.maxFeet === null || feet <= band.maxFeet)
  if (ready === undefined || ready.process === null) return refuse(refuseBand({ food, canner, query, feet }, line, ready?.band))

  const { process } = ready
  const offset = canner === 'dial' ? needleOffset(query) : NO_OFFSET
  if (!offset.ok) return refuse(refuseGauge({ food, canner, query, feet }, offset.problem))
  const needlePsi = canner === 'dial' ? Number(process.psi) + offset.value : null
  return ok(process.sterilise.required ? withSterileJars(process, feet) : { ...process, elevationFeet: feet, needlePsi })
}

const NO_OFFSET = ok(0)

/** Minutes of boiling for the empty jars, and how long the filled ones boil if those are not boiled first. */
function withSterileJars(process: NonNullable<ReadyLine['bands'][number]['process']>, feet: number): ScheduledProcess {
  const minutes = steriliseMinutes(feet)
  return {
    ...process,
    elevationFeet: feet,
    needlePsi: null,
    sterilise: { ...process.sterilise, minutes },
    minutesWithoutSterilising: process.method === 'boiling-water' ? minutes : null,
  }
}
