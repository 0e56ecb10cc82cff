import type { JarRange } from '@/shared/allocation/predict-shares'
import { type JarChances, chanceOfAtLeast, expectedJars, jarsAtChance } from '@/shared/recipes/jar-chances'
import { type ForecastLosses, type ForecastPreparation, jarsOfPreparation, poundsWanted } from './preparation-jars'
import { type PromisedProduce, produceOfDay, type ProduceOfDay, type WeighedProduce } from './produce-of-day'

/** What the forecast of a day rests on. */
export interface ForecastDay {
  readonly preparations: readonly ForecastPreparation[]
  readonly promised: readonly PromisedProduce[]
  readonly weighed: readonly WeighedProduce[]
  readonly losses?: ForecastLosses
  /** Jars that earlier batches gave, by preparation, in its jar size. */
  readonly logged?: ReadonlyMap<string, readonly number[]>
}

/** What the jars are reckoned from: the plan alone, the produce that is promised or bought, or what was weighed in less culls. */
export type ForecastBasis = 'plan' | 'promised' | 'weighed'

/** Produce of one preparation, in pounds: what it needs, and its part of what there is. */
export interface ProduceStanding extends ProduceOfDay {
  readonly needed: number
  /** Its part of the usable produce; never more than it needs. */
  readonly forThis: number
  /** Other preparations draw on the same produce. */
  readonly isShared: boolean
}

/** Jars of one preparation as things stand now. */
export interface PreparationForecast {
  readonly preparationId: string
  readonly basis: ForecastBasis
  /** Jars to fill as planned, and as the produce allows now: nine days of ten give `low` or more, one of ten more than `high`. */
  readonly planned: JarRange
  readonly now: JarRange
  /** Sealed jars: after those that do not seal. All jars of a product without a process, which are kept cold. */
  readonly sealed: JarRange
  readonly chances: JarChances
  readonly claimed: number
  /** The chance that every claim is met in full, 0 to 1; 1 where nobody claims. */
  readonly chanceOfClaims: number
  /** Null where the recipe names no weight, or nothing of its produce is promised or here. */
  readonly produce: ProduceStanding | null
}

/**
 * The jars that each preparation will give as things stand: by the plan, then by what is promised or bought, then by what was weighed in.
 *
 * Recipes in whole batches take what they need of a shared produce first, in the order of their letters; plain packs share the rest in
 * proportion to their need. A unit that says no weight is not counted. More produce than the plan needs makes no more jars than planned.
 */
export function forecastDay({ preparations, promised, weighed, losses, logged }: ForecastDay): PreparationForecast[] {
  const wants = preparations.map((each) => ({ each, wants: poundsWanted(each) }))
  return wants.map(({ each, wants: own }) => {
    const rivals = own === null ? [] : wants.flatMap(({ each: rival, wants: its }) => (its?.key === own.key ? [{ each: rival, its }] : []))
    const there = own && produceOfDay(own, promised, weighed)
    const part = own && there && partOf(each, rivals, there.usable)
    const given = losses ?? USUAL
    const planned = jarsOfPreparation(each, null, given, logged?.get(each.id))
    const now = part === null ? planned : jarsOfPreparation(each, part, given, logged?.get(each.id))
    return {
      preparationId: each.id,
      basis: there === null ? 'plan' : there.cameLots > 0 ? 'weighed' : 'promised',
      planned: planned.filled,
      now: now.filled,
      sealed: {
        low: jarsAtChance(now.sealed, 0.9),
        typical: Math.round(expectedJars(now.sealed)),
        high: jarsAtChance(now.sealed, 0.1),
      },
      chances: now.sealed,
      claimed: each.claimed,
      chanceOfClaims: chanceOfAtLeast(now.sealed, each.claimed),
      produce:
        own === null || there === null || part === null
          ? null
          : { ...there, needed: own.pounds, forThis: part, isShared: rivals.length > 1 },
    }
  })
}

/** The chance that so many sealed jars come about, 0 to 1: what a household may count on while it makes up its mind. */
export const chanceOfJars = ({ chances }: PreparationForecast, jars: number): number => chanceOfAtLeast(chances, jars)

const USUAL: ForecastLosses = { unsealed: 0.02 }

type Rival = { readonly each: ForecastPreparation; readonly its: NonNullable<ReturnType<typeof poundsWanted>> }

/** Pounds of `usable` that fall to one of those that draw on them. */
function partOf(own: ForecastPreparation, rivals: readonly Rival[], usable: number): number {
  const first = rivals.filter(({ its }) => its.poundsPerBatch !== null).toSorted((a, b) => (a.each.letter < b.each.letter ? -1 : 1))
  let left = usable
  for (const { each, its } of first) {
    const batch = Number(its.poundsPerBatch)
    const taken = Math.min(its.pounds, Math.floor(left / batch + EDGE) * batch)
    if (each.id === own.id) return taken
    left -= taken
  }
  const packs = rivals.filter(({ its }) => its.poundsPerBatch === null)
  const wanted = packs.reduce((sum, { its }) => sum + its.pounds, 0)
  const mine = packs.find(({ each }) => each.id === own.id)?.its.pounds ?? 0
  return wanted <= left ? mine : (left * mine) / wanted
}

/** Pounds are sums of fractions: 63 lb must be nine batches of 7 lb. */
const EDGE = 1e-9
