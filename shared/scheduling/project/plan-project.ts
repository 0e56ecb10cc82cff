import { improveProject, mayImproveProject, type ProjectSearch, startProjectSearch } from '@/shared/scheduling/project/improve-project'
import type { Project, ProjectSchedule } from '@/shared/scheduling/project/project'
import {
  lowerMost,
  mayBeProved,
  mayProveMore,
  type ProjectProof,
  proveOn,
  startProjectProof,
} from '@/shared/scheduling/proof/prove-project'
import { followSchedule, improveShop, type ShopSearch, startShopSearch } from '@/shared/scheduling/shop/improve-shop'
import { shopOf } from '@/shared/scheduling/shop/shop'

/** What a planner gives most of its steps to. */
export type Leaning = 'search' | 'proof' | 'both'

/**
 * Plans any project by what suits it: orders of tasks, or moves along machines where it is a shop; and beside that an exact search that
 * raises the bound and now and then finds a better schedule. Deterministic for a seed, a leaning and a number of rounds.
 */
export type ProjectPlanner = {
  readonly project: Project
  readonly lists: ProjectSearch
  readonly shop: ShopSearch | null
  readonly leaning: Leaning
  proof: ProjectProof | null
  best: ProjectSchedule
  bound: number
  rounds: number
  /** Conflicts of the proof when it last gained something. */
  gainedAt: number
  /** End of a schedule that somebody else knows; earlier ones alone are of use. */
  known: number
}

/** Starts a planner. The project must have no `projectProblem`. */
export function startProjectPlanner(project: Project, seed: number, leaning: Leaning = 'both'): ProjectPlanner {
  const lists = startProjectSearch(project, seed)
  const machines = shopOf(project)
  const shop = machines && startShopSearch(machines, lists.best, seed)
  const best = shop && shop.best.makespan < lists.best.makespan ? shop.best : lists.best
  return { project, lists, shop, leaning, proof: null, best, bound: lists.bound, rounds: 0, gainedAt: 0, known: Number.POSITIVE_INFINITY }
}

/** True while a better schedule or bound may be found. */
export const mayPlanOn = ({ best, bound, known }: ProjectPlanner): boolean => Math.min(best.makespan, known) > bound

/** Somebody else knows a schedule that ends then, and that none ends before the bound. */
export function tellPlanner(planner: ProjectPlanner, known: number, bound: number): void {
  planner.known = Math.min(planner.known, known)
  planner.bound = Math.max(planner.bound, Math.min(bound, planner.best.makespan))
}

/** Rounds before the first proof: a good schedule makes it shorter. */
const FIRST_PROOF = { search: Number.POSITIVE_INFINITY, proof: 10, both: 40 } as const
/** Of so many rounds one goes to the kind of work that a planner does not lean to. */
const OTHER_SHARE = 8
/** Conflicts without gain, times variables, after which a proof is gone on with seldom. */
const PROOF_PATIENCE = 4_000_000

/** Does a number of rounds, some milliseconds each. */
export function planOn(planner: ProjectPlanner, rounds: number): void {
  for (let round = 0; round < rounds && mayPlanOn(planner); round++) {
    planner.rounds++
    const other = planner.rounds % OTHER_SHARE === 0
    const isSearch = isStale(planner) ? !other : planner.leaning === 'proof' ? other : planner.rounds % 2 === 0
    if (planner.rounds <= FIRST_PROOF[planner.leaning] || isSearch || !proveSome(planner)) searchSome(planner)
  }
}

function isStale({ proof, gainedAt }: ProjectPlanner): boolean {
  if (!proof) return false
  const variables = proof.solver.store.bound.length / 2
  return (proof.solver.conflicts - gainedAt) * variables > PROOF_PATIENCE
}

function searchSome(planner: ProjectPlanner): void {
  const { shop, lists } = planner
  if (shop) improveShop(shop, 200)
  else if (mayImproveProject(lists)) improveProject(lists, 20)
  const found = shop ? shop.best : lists.best
  if (found.makespan < planner.best.makespan) planner.best = found
}

/** False when there is nothing (more) to prove. */
function proveSome(planner: ProjectPlanner): boolean {
  const known = Math.min(planner.best.makespan, planner.known)
  if (!planner.proof) {
    if (!mayBeProved(planner.project, known)) return false
    planner.proof = startProjectProof(planner.project, planner.bound, known)
  }
  const { proof } = planner
  lowerMost(proof, known)
  const mayMore = mayProveMore(proof)
  const before = { bound: proof.bound, most: proof.most }
  proveOn(proof, 50)
  if (proof.bound > before.bound || proof.most < before.most) planner.gainedAt = proof.solver.conflicts
  planner.bound = Math.max(planner.bound, Math.min(proof.bound, known))
  if (proof.found && proof.found.makespan < planner.best.makespan) {
    planner.best = proof.found
    if (planner.shop) followSchedule(planner.shop, proof.found)
    else planner.lists.best = proof.found
  }
  return mayMore
}
