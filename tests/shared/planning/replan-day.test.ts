import { describe, expect, it } from 'vitest'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanLock } from '@/shared/planning/day-problem'
import { nothingSoFar } from '@/shared/planning/day-so-far'
import { planOnce } from '@/shared/planning/plan-once'
import { type Replan, replanDay } from '@/shared/planning/replan-day'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'
import { checkReplan } from '@/tests/support/check-replan'
import { asPlannedUntil, withLoad } from '@/tests/support/day-so-far'
import type { DaySoFar } from '@/shared/planning/day-so-far'

const at = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

const before: DayPlan = (() => {
  const plan = planOnce(s1DayProblem)
  if (!plan.ok) throw new Error(JSON.stringify(plan.problem))
  return plan.value
})()

function again(soFar: DaySoFar, problem: DayProblem = s1DayProblem): Replan {
  const answer = replanDay(problem, before, soFar)
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem))
  expect(checkReplan(problem, before, soFar, answer.value)).toEqual([])
  return answer.value
}

const loadOf = (plan: DayPlan, code: string) => {
  const load = plan.loads.find((each) => each.code === code)
  if (!load) throw new Error(`no load ${code}`)
  return load
}

describe('an evening that goes as planned', () => {
  it.each(['17:40', '18:20', '19:14', '20:00', '21:00'])('changes nothing when it is planned anew at %s', (clock) => {
    const { plan, changes, dropped, brokenWaits } = again(asPlannedUntil(before, at(clock)))
    expect(changes.places).toEqual([])
    expect(changes.people).toEqual([])
    expect([dropped, brokenWaits]).toEqual([[], []])
    expect(plan.finishAt).toBe(before.finishAt)
    expect(plan.loads.map(({ code }) => code)).toEqual(before.loads.map(({ code }) => code))
  })
})

describe('a process that was interrupted', () => {
  it('is whole again from the new boil, and the loads behind it move with it and no others earlier', () => {
    const now = at('19:38')
    const soFar = withLoad(asPlannedUntil(before, now), 'L05', { boilAt: now, lostAt: at('19:36') })
    const { plan, changes } = again(soFar)
    expect(loadOf(plan, 'L05')).toMatchObject({ boilAt: now, processEndAt: now + 10 })
    expect(changes.finishAt).toBeGreaterThan(changes.finishBefore)
    expect(changes.finishAt - changes.finishBefore).toBeLessThanOrEqual(7) // seven minutes were lost
    expect(changes.people.length).toBeGreaterThan(0)
  })

  it('has all of its minutes still to come while the boil is not back', () => {
    const now = at('19:38')
    const { plan } = again(withLoad(asPlannedUntil(before, now), 'L05', { boilAt: null, lostAt: at('19:36') }))
    const load = loadOf(plan, 'L05')
    expect(load.boilAt).toBeGreaterThanOrEqual(now)
    expect(load.processEndAt - load.boilAt).toBe(10)
  })

  it('is never shorter than it was looked up to be when it was loaded', () => {
    const now = at('19:38')
    const { plan } = again(withLoad(asPlannedUntil(before, now), 'L05', { processMinutes: 15 }))
    const load = loadOf(plan, 'L05')
    expect(load.processEndAt - load.boilAt).toBe(15)
  })
})

describe('what goes wrong on the evening', () => {
  it('a canner that is out for good: nothing more goes into it, and what no longer fits is named', () => {
    const soFar = asPlannedUntil(before, at('19:20'), {
      setbacks: [{ kind: 'canner-out', cannerId: 'BW2', from: at('19:55'), until: null }],
    })
    const { plan, dropped } = again(soFar)
    expect(plan.loads.filter(({ cannerId, loadAt }) => cannerId === 'BW2' && loadAt > at('19:20'))).toEqual([])
    expect(dropped.filter(({ why }) => why === 'no-time').length).toBeGreaterThan(0)
    expect(plan.shortages.some(({ kind }) => kind === 'jars')).toBe(true)
  })

  it('a canner that comes back is heated anew before it is loaded', () => {
    const soFar = asPlannedUntil(before, at('18:42'), {
      setbacks: [{ kind: 'canner-out', cannerId: 'BW1', from: at('18:47'), until: at('19:00') }],
    })
    const { plan } = again(soFar)
    for (const load of plan.loads.filter(({ cannerId, loadAt }) => cannerId === 'BW1' && loadAt > at('18:47')))
      expect(load.loadAt).toBeGreaterThanOrEqual(at('19:35'))
    expect(plan.tasks.some(({ kind, cannerId, start }) => kind === 'preheat' && cannerId === 'BW1' && start === at('19:00'))).toBe(true)
  })

  it('somebody leaves: their tasks are given to others, and the person’s list says so', () => {
    const soFar = asPlannedUntil(before, at('19:20'), { setbacks: [{ kind: 'person-away', personId: 'p3', from: at('19:45') }] })
    const { plan, changes } = again(soFar)
    expect(plan.tasks.filter(({ peopleIds, end }) => peopleIds.includes('p3') && end > at('19:45'))).toEqual([])
    const cleo = changes.people.find(({ personId }) => personId === 'p3')
    expect(cleo?.changes.some(({ after }) => after === null)).toBe(true)
  })

  it('produce that comes late is prepared when it is there', () => {
    const soFar = asPlannedUntil(before, at('17:20'), { setbacks: [{ kind: 'produce-late', preparationId: 'plum-jam', at: at('18:10') }] })
    const { plan } = again(soFar)
    const own = plan.batches.filter(({ preparationId }) => preparationId === 'plum-jam')
    expect(Math.min(...own.map(({ cookStart }) => cookStart))).toBeGreaterThanOrEqual(at('18:10'))
  })

  it('produce for four batches of jam makes four, and the two left out are named', () => {
    const soFar = asPlannedUntil(before, at('18:20'), { setbacks: [{ kind: 'produce-short', preparationId: 'plum-jam', batches: 4 }] })
    const { plan, dropped } = again(soFar)
    expect(plan.batches.filter(({ preparationId }) => preparationId === 'plum-jam')).toHaveLength(4)
    expect(dropped.filter(({ of, why }) => of === 'batch' && why === 'no-produce')).toHaveLength(2)
  })

  it('a load that is given up gets a new load with the next code, within two hours', () => {
    const now = at('19:38')
    const failed = withLoad(asPlannedUntil(before, now), 'L05', { state: 'failed', boilAt: null, emptyAt: now })
    const jars = { jars: 8, since: now, loadBy: now + 120 }
    const batches = failed.batches.map((batch) => (batch.batchId === 'plum-jam/3' ? { ...batch, waiting: jars } : batch))
    const { plan } = again({ ...failed, batches })
    expect(loadOf(plan, 'L11')).toMatchObject({ batchParts: [{ batchId: 'plum-jam/3' }] })
    expect(loadOf(plan, 'L11').loadAt).toBeLessThanOrEqual(now + 120)
  })

  it('jars whose wait no canner can meet are told with the minute, and are in no load', () => {
    const now = at('19:52')
    const soFar = withLoad(
      asPlannedUntil(before, now, { setbacks: [{ kind: 'canner-out', cannerId: 'BW1', from: at('19:00'), until: null }] }),
      'L06',
      {
        state: 'failed',
        emptyAt: now,
      },
    )
    const since = at('19:50')
    const batches = soFar.batches.map((batch) =>
      batch.batchId === 'plum-jam/4' ? { ...batch, waiting: { jars: 8, since, loadBy: null } } : batch,
    )
    const { plan, brokenWaits, dropped } = again({ ...soFar, batches })
    expect(brokenWaits).toContainEqual(
      expect.objectContaining({ batchId: 'plum-jam/4', stage: 'filled', jars: 8, loadBy: since + 15, cannerFreeAt: at('20:38') }),
    )
    expect(dropped).toContainEqual(expect.objectContaining({ id: 'plum-jam/4', why: 'cannot-wait' }))
    expect(plan.loads.some(({ loadAt, batchParts }) => loadAt > now && batchParts.some(({ batchId }) => batchId === 'plum-jam/4'))).toBe(
      false,
    )
  })
})

describe('tasks fixed by hand', () => {
  const lock = (more: Partial<PlanLock>): PlanLock => ({
    ...{ preparationId: 'dill-pickles', batch: 4, task: 'load', at: null, equipmentId: null, personId: null },
    ...more,
  })
  const locked = (...locks: PlanLock[]): DayProblem => ({ ...s1DayProblem, locks })

  it('are kept by the plan of the day, which goes round them', () => {
    const problem = locked(
      lock({ at: at('18:47'), equipmentId: 'BW1' }),
      lock({ preparationId: 'plum-jam', batch: 2, task: 'cook', personId: 'p3' }),
    )
    const plan = planOnce(problem)
    if (!plan.ok) throw new Error(JSON.stringify(plan.problem))
    expect(checkDayPlan(problem, plan.value)).toEqual([])
    const load = plan.value.loads.find(({ batchParts }) => batchParts.some(({ batchId }) => batchId === 'dill-pickles/4'))
    expect(load).toMatchObject({ loadAt: at('18:47'), cannerId: 'BW1' })
  })

  it('are kept while the day runs', () => {
    const soFar = asPlannedUntil(before, at('18:55'))
    const { plan } = again(soFar, locked(lock({ preparationId: 'plum-jam', batch: 6, at: at('20:50'), equipmentId: 'BW1' })))
    const load = plan.loads.find(({ batchParts }) => batchParts.some(({ batchId }) => batchId === 'plum-jam/6'))
    expect(load).toMatchObject({ loadAt: at('20:50'), cannerId: 'BW1' })
  })

  it('that cannot be kept are refused by name', () => {
    const impossible = lock({ preparationId: 'plum-jam', batch: 6, at: at('18:30') })
    const other = lock({ at: null, equipmentId: 'BW2' })
    expect(replanDay(locked(other, impossible), before, asPlannedUntil(before, at('18:55')))).toEqual({
      ok: false,
      problem: { kind: 'locked', locks: [impossible] },
    })
  })

  it('no longer bind once their work has begun', () => {
    const begun = lock({ preparationId: 'plum-jam', batch: 1, task: 'cook', at: at('17:00') })
    again(asPlannedUntil(before, at('18:20')), locked(begun))
  })
})

it('a day of which nothing has happened keeps its plan', () => {
  const { changes } = again(nothingSoFar(at('16:59')))
  expect(changes.places).toEqual([])
})
