import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import { dualFeasible, largestLoad } from '@/shared/scheduling/day/load-shares'
import { fixed, type Level, type Limit, loading, type Stage, type Team, type Tray } from '@/shared/scheduling/proof/day-parts'
import { limitCanners } from '@/shared/scheduling/proof/limit-canners'
import { neverMoreThan, type Occupation, variablesOf } from '@/shared/scheduling/proof/cumulative'
import { workFits } from '@/shared/scheduling/proof/energy'
import {
  addRule,
  atLeastAfter,
  atLeastOne,
  newSolver,
  provedLeast,
  type Solver,
  searchFor,
  settleRoot,
  variable,
} from '@/shared/scheduling/proof/solver'
import { leastOf, mostOf, type Store } from '@/shared/scheduling/proof/store'
import { type Weighed, weighsAtMost } from '@/shared/scheduling/proof/weighed'

/**
 * A search for the earliest slot by which a day can end, with every rule kept but who of a kind does what.
 *
 * Each tray leads a load in a canner of some kind, or joins the load that an earlier tray of its family leads. People count by set of skills,
 * kettles by least size, canners by kind: what a named plan needs at least. So what is impossible here is impossible for every plan.
 */
export type DayProof = {
  readonly model: DayModel
  readonly solver: Solver
  readonly finish: number
  readonly stages: readonly Stage[]
  readonly trays: readonly Tray[]
  /** No plan of the day ends before this slot. */
  bound: number
  /** A plan that ends after this is known, or the day closes then. */
  most: number
  /** True when the rules that are kept here allow an end at the bound: nothing more can be proved. */
  isSpent: boolean
}

/**
 * Sets out to prove when a day can end.
 *
 * @param bound - a slot known to be no later than the earliest end
 * @param known - end of a plan that is known; one past closing when none is
 */
export function startDayProof(model: DayModel, bound: number, known: number): DayProof {
  const solver = newSolver()
  const most = known - 1
  const finish = variable(solver, bound, Math.max(bound, most))
  const stages = model.batches.map((batch) => stageOf(solver, batch, most))
  const trays: Tray[] = []
  for (const stage of stages)
    for (const tray of stage.batch.trays.keys()) trays.push(trayOf(model, solver, trays, stage, tray, most, finish))
  const proof: DayProof = { model, solver, finish, stages, trays, bound, most, isSpent: false }
  orderAlike(proof)
  limitLoads(proof)
  limitThings(proof)
  settleRoot(solver)
  noteBound(proof)
  return proof
}

function stageOf(solver: Solver, batch: ModelBatch, most: number): Stage {
  const lengths = [...new Set(batch.teams.map((team) => batch.prepLength[team] ?? 0))]
  const smallest = lengths.map((length) => ({
    length,
    people: Math.min(...batch.teams.filter((team) => batch.prepLength[team] === length)),
  }))
  const teams = smallest.map(
    ({ length, people }): Team => ({ length, people, chosen: smallest.length === 1 ? null : [2 * variable(solver, 0, 1), 1] }),
  )
  const prep = variable(solver, batch.ready, most)
  const prepEnd = variable(solver, 0, most)
  const cook = variable(solver, 0, most)
  const fill = variable(solver, 0, most - batch.fill - batch.tail)
  if (teams.length > 1)
    atLeastOne(
      solver,
      teams.flatMap(({ chosen }) => chosen ?? []),
    )
  for (const [index, { length, chosen }] of teams.entries()) {
    atLeastAfter(solver, prep, prepEnd, length, ...(chosen ?? []))
    atLeastAfter(solver, prepEnd, prep, -length, ...(chosen ?? []))
    for (const other of teams.slice(index + 1))
      if (chosen && other.chosen) atLeastOne(solver, [chosen[0] ^ 1, 1 - chosen[1], other.chosen[0] ^ 1, 1 - other.chosen[1]])
  }
  atLeastAfter(solver, prep, prepEnd, Math.min(...lengths))
  atLeastAfter(solver, prepEnd, cook, 0)
  atLeastAfter(solver, cook, prepEnd, -batch.waitPrepCook)
  atLeastAfter(solver, cook, fill, batch.cook)
  atLeastAfter(solver, fill, cook, -batch.cook - batch.waitCookFill)
  return { batch, prep, prepEnd, cook, fill, teams }
}

function trayOf(model: DayModel, solver: Solver, before: readonly Tray[], stage: Stage, index: number, most: number, finish: number): Tray {
  const { batch } = stage
  const jars = batch.trays[index] ?? 0
  const capacity = model.families[batch.family]?.capacity ?? []
  const start = variable(solver, 0, most - batch.tail)
  atLeastAfter(solver, stage.fill, start, batch.fill)
  atLeastAfter(solver, start, stage.fill, -batch.fill - batch.waitFillLoad)
  atLeastAfter(solver, start, finish, batch.tail)
  const kinds = capacity.flatMap((holds, kind) => (holds >= jars ? [{ kind, chosen: variable(solver, 0, 1) }] : []))
  const only = kinds.length === 1 ? kinds[0] : undefined
  const leads = only ? only.chosen : variable(solver, 0, 1)
  if (!only) {
    atLeastOne(solver, [2 * leads + 1, 0, ...kinds.flatMap(({ chosen }) => [2 * chosen, 1])])
    for (const { chosen } of kinds) atLeastOne(solver, [2 * chosen + 1, 0, 2 * leads, 1])
    onlyOne(
      solver,
      kinds.map(({ chosen }) => chosen),
    )
  }
  const largest = Math.max(0, ...capacity)
  const joins = before.flatMap((other, leader) => {
    if (other.stage.batch.family !== batch.family || other.jars + jars > largest) return []
    const chosen = variable(solver, 0, 1)
    atLeastAfter(solver, start, other.start, 0, 2 * chosen, 1)
    atLeastAfter(solver, other.start, start, 0, 2 * chosen, 1)
    atLeastOne(solver, [2 * chosen + 1, 0, 2 * other.leads, 1])
    return [{ leader, chosen }]
  })
  const choices = [leads, ...joins.map(({ chosen }) => chosen)]
  atLeastOne(
    solver,
    choices.flatMap((one) => [2 * one, 1]),
  )
  onlyOne(solver, choices)
  return { stage, jars, start, leads, kinds, joins }
}

function onlyOne(solver: Solver, choices: readonly number[]): void {
  choices.forEach((one, at) => {
    for (const other of choices.slice(at + 1)) atLeastOne(solver, [2 * one + 1, 0, 2 * other + 1, 0])
  })
}

/** Batches that differ in nothing are filled in order; so are trays of one batch that hold as many jars put into loads. */
function orderAlike({ solver, stages, trays }: DayProof): void {
  const { index: _, ...kept } = stages[0]?.batch ?? { index: 0 }
  const keyOf = ({ batch }: Stage) => JSON.stringify(Object.keys(kept).map((key) => batch[key as keyof ModelBatch]))
  const last = new Map<string, Stage>()
  for (const stage of stages) {
    const before = last.get(keyOf(stage))
    if (before) atLeastAfter(solver, before.fill, stage.fill, 0)
    last.set(keyOf(stage), stage)
  }
  trays.forEach((tray, at) => {
    const before = trays[at - 1]
    if (before?.stage === tray.stage && before.jars === tray.jars) atLeastAfter(solver, before.start, tray.start, 0)
  })
}

/** No load holds more than its canner, and a family needs as many loads as its trays ask for. */
function limitLoads({ model, solver, trays }: DayProof): void {
  trays.forEach((leader, at) => {
    const joined = trays.flatMap(({ joins, jars }): Weighed[] =>
      joins.filter((join) => join.leader === at).map(({ chosen }) => ({ side: 2 * chosen, value: 1, weight: jars })),
    )
    joined.sort((a, b) => b.weight - a.weight)
    for (const { kind, chosen } of leader.kinds) {
      const holds = model.families[leader.stage.batch.family]?.capacity[kind] ?? 0
      const sides = joined.map(({ side }) => side >> 1)
      addRule(solver, weighsAtMost(joined, holds - leader.jars, [2 * chosen, 1]), [...sides, chosen])
    }
  })
  for (const family of model.families.keys()) {
    const own = trays.filter(({ stage }) => stage.batch.family === family)
    const share = (measure: (part: number) => number) => own.reduce((sum, { jars }) => sum + measure(jars / largestLoad(model, family)), 0)
    const loads = Math.ceil(
      Math.max(
        share((part) => part),
        share(dualFeasible),
      ) - 1e-6,
    )
    const joining = own.map(({ leads }): Weighed => ({ side: 2 * leads + 1, value: 0, weight: 1 }))
    addRule(
      solver,
      weighsAtMost(joining, own.length - loads, null),
      own.map(({ leads }) => leads),
    )
  }
}

/** Everything there is a limited number of. */
function limitThings(proof: DayProof): void {
  const { model, solver, stages, trays, most } = proof
  const level = (count: number) => new Int32Array(Math.max(1, most)).fill(count)
  const limit = (occupations: readonly Occupation[], capacity: Int32Array, isTight = false) => {
    const real = occupations.filter(({ height, least }) => height > 0 && least > 0)
    const all = real.reduce((sum, { height }) => sum + height, 0)
    if (!capacity.some((count) => count < all)) return
    addRule(solver, neverMoreThan(real, capacity), variablesOf(real))
    if (isTight) addRule(solver, workFits(real, capacity), variablesOf(real), true)
  }
  const { day, families } = model
  const onStove = stages.map((stage) => cooking(stage, 0))
  const onHeat = ({ stage }: Tray) => families[stage.batch.family]?.onHeat ?? 0
  limit(
    stages.map((stage) => filling(stage, 1)),
    level(day.fillStations),
  )
  limit(onStove, level(day.stoveWatch))
  limit([...onStove, ...trays.map((tray) => loading(tray, 0, onHeat(tray), 1))], level(day.burners))
  limit(stages.flatMap(preparing), level(day.prepPlaces))
  const work = stages.map(prepWork)
  addRule(solver, workFits(work, level(day.prepPlaces)), variablesOf(work), true)
  for (const [kind, { ids }] of model.cannerKinds.entries()) {
    const here = trays.flatMap((tray) => {
      const chosen = tray.kinds.find((one) => one.kind === kind)?.chosen
      return chosen === undefined ? [] : [{ ...loading(tray, 0, tray.stage.batch.tail, 1), needs: [2 * chosen, 1] as const }]
    })
    limit(here, level(ids.length))
  }
  for (const isPressure of [false, true]) limitCanners(proof, isPressure, limit, level)
  limitKettles(proof, limit, level)
  limitPeople(proof, limit)
}

/** For every least size: the kettles of that size and more against the batches that need one. */
function limitKettles({ model, stages }: DayProof, limit: Limit, level: Level): void {
  for (const key of new Set(stages.map(({ batch }) => batch.kettleKinds.join(' ')))) {
    const kinds = key.split(' ').filter(Boolean).map(Number)
    const own = stages.filter(({ batch }) => batch.kettleKinds.every((kind) => kinds.includes(kind)))
    limit(
      own.map((stage) => cooking(stage, stage.batch.turn)),
      level(kinds.reduce((sum, kind) => sum + (model.kettleKinds[kind]?.ids.length ?? 0), 0)),
    )
  }
}

/** For every set of skills: the people with one of them against the work that asks for one. */
function limitPeople({ model, solver, stages, trays, most }: DayProof, limit: Limit): void {
  const { handling, crews } = model
  const breaks = crews.map((crew) => {
    const isInside = crew.breakLength > 0 && crew.breakFrom >= crew.from && crew.breakTo + crew.breakLength <= crew.to
    return isInside ? variable(solver, crew.breakFrom, crew.breakTo) : -1
  })
  const skills = model.crewsWith.length
  for (let set = 1; set < 2 ** skills; set++) {
    const asked = (skill: number) => (set & (1 << skill)) !== 0
    const capacity = new Int32Array(Math.max(1, most))
    const away: Occupation[] = []
    for (const [index, crew] of crews.entries()) {
      if (!crew.skills.some((has, skill) => has && asked(skill))) continue
      for (let slot = crew.from; slot < Math.min(crew.to, most); slot++) capacity[slot] = (capacity[slot] ?? 0) + crew.size
      const start = breaks[index] ?? -1
      if (start >= 0) away.push(fixed(start, 0, crew.breakLength, crew.size, null))
    }
    const work = [
      ...stages.flatMap((stage) => (asked(stage.batch.prepSkill) ? preparing(stage) : [])),
      ...stages.flatMap((stage) => (asked(stage.batch.fillSkill) ? [filling(stage, stage.batch.fillPeople)] : [])),
      ...trays.flatMap((tray) =>
        asked(handling.skill)
          ? [
              loading(tray, 0, handling.load, handling.people),
              loading(tray, tray.stage.batch.tail - handling.unload, handling.unload, handling.people),
            ]
          : [],
      ),
    ]
    if (work.length > 0) limit([...away, ...work], capacity)
  }
}

/** The fewest people the whole time, and those that a larger team has more. */
function preparing({ prep, prepEnd, teams }: Stage): Occupation[] {
  const fewest = Math.min(...teams.map(({ people }) => people))
  const shortest = Math.min(...teams.map(({ length }) => length))
  return [
    { start: prep, startsAfter: 0, end: prepEnd, endsAfter: 0, least: shortest, height: fewest, needs: null },
    ...teams.filter(({ people }) => people > fewest).map(({ length, people, chosen }) => fixed(prep, 0, length, people - fewest, chosen)),
  ]
}

/** The person-slots of a preparation, whatever the team. */
const prepWork = ({ prep, prepEnd, teams }: Stage): Occupation => ({
  ...{ start: prep, startsAfter: 0, end: prepEnd, endsAfter: 0, height: 1, needs: null, isWork: true },
  ...{ least: Math.min(...teams.map(({ length, people }) => length * people)), mostAtOnce: Math.max(...teams.map(({ people }) => people)) },
})

const filling = ({ fill, batch }: Stage, height: number): Occupation => fixed(fill, 0, batch.fill, height, null)

/** A kettle in use, from cooking to the end of filling and so long after. */
const cooking = ({ cook, fill, batch }: Stage, turn: number): Occupation => ({
  ...{
    start: cook,
    startsAfter: 0,
    end: fill,
    endsAfter: batch.fill + turn,
    least: batch.cook + batch.fill + turn,
    height: 1,
    needs: null,
  },
})

function noteBound(proof: DayProof): void {
  proof.bound = proof.solver.isImpossible
    ? proof.most + 1
    : Math.min(proof.most + 1, Math.max(proof.bound, provedLeast(proof.solver, proof.finish)))
}

/** True while the bound may rise. */
export const mayProveMoreOfDay = (proof: DayProof): boolean => proof.bound <= proof.most && !proof.isSpent

/** Somebody knows a plan that ends in this slot. */
export function lowerMostOfDay(proof: DayProof, known: number): void {
  proof.most = Math.min(proof.most, known - 1)
}

/** Works on "no plan ends at the bound", for so many conflicts. */
export function proveDayOn(proof: DayProof, conflicts: number): void {
  if (!mayProveMoreOfDay(proof)) return
  const outcome = searchFor(proof.solver, [2 * proof.finish + 1, -proof.bound], (store) => firstOpen(proof, store), conflicts)
  if (outcome === 'solved') proof.isSpent = true
  noteBound(proof)
}

/** Decides loads first, joined where they may be, then teams, then the earliest start. */
function firstOpen({ trays, stages, solver }: DayProof, store: Store): readonly [number, number] | null {
  const isOpen = (one: number) => leastOf(store, one) < mostOf(store, one)
  for (const tray of trays) {
    const choice = [...tray.joins.map(({ chosen }) => chosen), tray.leads, ...tray.kinds.map(({ chosen }) => chosen)].find(isOpen)
    if (choice !== undefined) return [2 * choice, 1]
  }
  const team = stages.flatMap(({ teams }) => teams.flatMap(({ chosen }) => (chosen && isOpen(chosen[0] >> 1) ? [chosen] : [])))[0]
  if (team) return team
  let first = -1
  for (let one = 0; one < solver.store.bound.length / 2; one++)
    if (isOpen(one) && (first < 0 || leastOf(store, one) < leastOf(store, first))) first = one
  return first < 0 ? null : [2 * first + 1, -leastOf(store, first)]
}
