import type { DayModel } from '@/shared/scheduling/day/day-model'
import { type DaySearch, improve, lowerLimit, startSearch } from '@/shared/scheduling/day/improve-day'
import type { Leaning } from '@/shared/scheduling/project/plan-project'
import { type DayProof, lowerMostOfDay, mayProveMoreOfDay, proveDayOn, startDayProof } from '@/shared/scheduling/proof/prove-day'

/**
 * Plans a day: the search for ever earlier finishes, and for small days beside it the proof that none is earlier. Deterministic for a seed,
 * a leaning and a number of rounds.
 */
export type DayPlanner = {
  readonly model: DayModel
  readonly search: DaySearch
  readonly leaning: Leaning
  proof: DayProof | null
  /** No plan of the day ends before this slot. */
  bound: number
  rounds: number
  /** The slot in which a plan ends that somebody else knows. */
  known: number
}

/** Most batches and trays of a day that something is proved about: beyond that a proof came no further than the bound it began at. */
const MOST_PROVED = { batches: 24, trays: 48 } as const

/** Starts a planner from a slot that no plan ends before. */
export function startDayPlanner(model: DayModel, bound: number, seed: number, leaning: Leaning): DayPlanner {
  const search = startSearch(model, bound, seed)
  return { model, search, leaning, proof: null, bound, rounds: 0, known: model.slots + 1 }
}

/** True while an earlier finish or a higher bound may be found. */
export const mayPlanDayOn = (planner: DayPlanner): boolean => finishOf(planner) > planner.bound && planner.bound <= planner.model.slots

/** The earliest finish that anybody knows; one past closing while nobody does. */
const finishOf = ({ search, known }: DayPlanner): number => Math.min(search.best?.finish ?? known, known)

/** Somebody else knows a plan that ends in this slot, and that none ends before the bound. */
export function tellDayPlanner(planner: DayPlanner, known: number, bound: number): void {
  planner.bound = Math.max(planner.bound, bound)
  if (known >= planner.known) return
  planner.known = known
  lowerLimit(planner.search, known - 1)
}

/** Rounds before the first proof: with a good plan at hand it has less to rule out. */
const FIRST_PROOF = { search: Number.POSITIVE_INFINITY, proof: 30, both: 60 } as const
/** One that leans to proofs searches one round of so many. */
const SEARCH_SHARE = 8

/** Goes on for one round, some milliseconds. */
export function planDayOn(planner: DayPlanner): void {
  if (!mayPlanDayOn(planner)) return
  planner.rounds++
  const isSearch = planner.rounds % (planner.leaning === 'proof' ? SEARCH_SHARE : 2) === 0
  if (planner.rounds <= FIRST_PROOF[planner.leaning] || isSearch || !proveSome(planner))
    improve(planner.search, planner.model.batches.length > 300 ? 2 : 10)
}

/** False when there is nothing (more) to prove. */
function proveSome(planner: DayPlanner): boolean {
  const { model } = planner
  if (!planner.proof) {
    const trays = model.batches.reduce((sum, batch) => sum + batch.trays.length, 0)
    if (model.batches.length > MOST_PROVED.batches || trays > MOST_PROVED.trays) return false
    planner.proof = startDayProof(model, planner.bound, finishOf(planner))
  }
  const { proof } = planner
  lowerMostOfDay(proof, finishOf(planner))
  const mayMore = mayProveMoreOfDay(proof)
  proveDayOn(proof, 50)
  planner.bound = Math.max(planner.bound, Math.min(proof.bound, finishOf(planner)))
  return mayMore
}
