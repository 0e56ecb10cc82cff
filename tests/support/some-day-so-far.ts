import fc from 'fast-check'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { BatchSoFar, DaySoFar, LoadSoFar, Setback } from '@/shared/planning/day-so-far'
import { asPlannedUntil } from './day-so-far'

/** A running day of a plan: begun as planned up to a minute, and then one or more of the things that go wrong. */
export const someDaySoFar = (problem: DayProblem, plan: DayPlan): fc.Arbitrary<DaySoFar> =>
  fc
    .record({
      now: fc.integer({ min: problem.window.peopleArriveAt, max: plan.finishAt - 5 }),
      loads: fc.array(fc.constantFrom('as-planned', 'as-planned', 'lost', 'again', 'again', 'late', 'failed'), {
        minLength: 30,
        maxLength: 30,
      }),
      batches: fc.array(fc.constantFrom('as-planned', 'as-planned', 'as-planned', 'short', 'abandoned', 'late'), {
        minLength: 60,
        maxLength: 60,
      }),
      minutes: fc.integer({ min: 1, max: 9 }),
      setbacks: fc.array(someSetback(problem), { maxLength: 2 }),
    })
    .map(({ now, loads, batches, minutes, setbacks }) => {
      const asPlanned = asPlannedUntil(plan, now)
      const changed = asPlanned.loads.map((load, index) => changedLoad(load, loads[index] ?? 'as-planned', now, minutes))
      return {
        ...asPlanned,
        loads: changed,
        batches: asPlanned.batches.map((batch, index) => changedBatch(batch, changed, batches[index] ?? 'as-planned', now, minutes)),
        setbacks: setbacks.map((each) => each(now)).filter((each) => each.kind !== 'person-late' || !isAtWork(plan, each.personId, now)),
      }
    })

const isAtWork = (plan: DayPlan, personId: string, now: number) =>
  plan.tasks.some((task) => task.kind !== 'brief' && task.start < now && task.peopleIds.includes(personId))

function changedLoad(load: LoadSoFar, change: string, now: number, minutes: number): LoadSoFar {
  if (load.state !== 'in-canner' || load.loadedAt === null) return load
  const isBoiling = load.boilAt !== null && load.processEndAt === null
  const after = Math.max(load.boilAt ?? load.loadedAt, now - minutes)
  if (change === 'lost' && isBoiling) return { ...load, boilAt: null, lostAt: after }
  if (change === 'again' && isBoiling) return { ...load, boilAt: now, lostAt: after }
  if (change === 'late' && load.boilAt !== null && load.processEndAt === null) return { ...load, boilAt: null }
  if (change === 'failed' && load.processEndAt === null) return { ...load, state: 'failed', boilAt: null, emptyAt: now }
  return load
}

function changedBatch(batch: BatchSoFar, loads: readonly LoadSoFar[], change: string, now: number, minutes: number): BatchSoFar {
  const failed = loads
    .filter(({ state }) => state === 'failed')
    .flatMap(({ jars }) => jars.filter((part) => part.batchId === batch.batchId))
  const back = failed.reduce((sum, part) => sum + part.jars, 0)
  if (back > 0) return { ...batch, waiting: { jars: back + (batch.waiting?.jars ?? 0), since: now, loadBy: now + 120 } }
  if (change === 'abandoned' && batch.state === 'cooking') return { ...batch, state: 'abandoned' }
  if (change === 'late' && batch.state === 'cooking' && batch.fillStartedAt === null && batch.startedAt !== null)
    return { ...batch, startedAt: Math.min(now - 1, batch.startedAt + minutes) }
  if (change === 'short' && batch.waiting && batch.jarsFilled === batch.waiting.jars && batch.jarsFilled > 1) {
    const jars = batch.jarsFilled - 1
    return { ...batch, jarsFilled: jars, waiting: { ...batch.waiting, jars } }
  }
  return batch
}

/** Something that goes wrong about now. */
const someSetback = (problem: DayProblem): fc.Arbitrary<(now: number) => Setback> => {
  const soon = fc.integer({ min: -10, max: 40 })
  const of = (list: readonly { readonly id: string }[]) => fc.constantFrom(...list.map(({ id }) => id))
  return fc.oneof(
    fc.record({ cannerId: of(problem.canners), from: soon, until: fc.option(fc.integer({ min: 41, max: 90 })) }).map(
      ({ cannerId, from, until }) =>
        (now: number): Setback => ({ kind: 'canner-out', cannerId, from: now + from, until: until === null ? null : now + until }),
    ),
    fc.record({ personId: of(problem.people), at: soon }).map(
      ({ personId, at }) =>
        (now: number): Setback => ({ kind: 'person-away', personId, from: now + at }),
    ),
    fc.record({ personId: of(problem.people), at: fc.integer({ min: 1, max: 40 }) }).map(
      ({ personId, at }) =>
        (now: number): Setback => ({ kind: 'person-late', personId, at: now + at }),
    ),
    fc.record({ preparationId: of(problem.preparations), at: fc.integer({ min: 1, max: 40 }) }).map(
      ({ preparationId, at }) =>
        (now: number): Setback => ({ kind: 'produce-late', preparationId, at: now + at }),
    ),
    fc.record({ preparationId: of(problem.preparations), batches: fc.integer({ min: 0, max: 5 }) }).map(
      ({ preparationId, batches }) =>
        (): Setback => ({ kind: 'produce-short', preparationId, batches }),
    ),
  )
}
