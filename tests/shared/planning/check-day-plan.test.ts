import { describe, expect, it } from 'vitest'
import type { DayPlan, PlannedLoad, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { planDay } from '@/shared/planning/plan-day'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'

const answer = planDay(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value

const withLoad = (index: number, change: (load: PlannedLoad) => Partial<PlannedLoad>): DayPlan => ({
  ...plan,
  loads: plan.loads.map((load, at) => (at === index ? { ...load, ...change(load) } : load)),
})
const withTask = (pick: (task: PlannedTask) => boolean, change: (task: PlannedTask) => Partial<PlannedTask>): DayPlan => {
  const found = plan.tasks.find(pick)
  return { ...plan, tasks: plan.tasks.map((task) => (task === found ? { ...task, ...change(task) } : task)) }
}
const withBatch = (change: (batch: DayPlan['batches'][number]) => Partial<DayPlan['batches'][number]>, index = 0): DayPlan => ({
  ...plan,
  batches: plan.batches.map((batch, at) => (at === index ? { ...batch, ...change(batch) } : batch)),
})
const kind =
  (wanted: PlannedTask['kind'], food = '') =>
  (task: PlannedTask) =>
    task.kind === wanted && (task.batchId ?? '').startsWith(food)
const shifted = (load: PlannedLoad, by: number): Partial<PlannedLoad> => ({
  jarBoilAt: load.jarBoilAt + by,
  loadAt: load.loadAt + by,
  heatAt: load.heatAt + by,
  boilAt: load.boilAt + by,
  processEndAt: load.processEndAt + by,
  restEndAt: load.restEndAt + by,
  emptyAt: load.emptyAt + by,
})
const pickleLoad = plan.loads.findIndex((load) => load.preparationId === 'dill-pickles')
const jamLoad = plan.loads.findIndex((load) => load.preparationId === 'plum-jam')

describe('the checker of a day plan', () => {
  it('finds nothing wrong with the plan it is given first', () => {
    expect(checkDayPlan(s1DayProblem, plan)).toEqual([])
  })

  const damages: readonly (readonly [rule: string, damaged: DayPlan])[] = [
    ['demand', { ...plan, batches: plan.batches.slice(1), loads: plan.loads }],
    ['scaling', withBatch(() => ({ multiple: 2 }))],
    [
      'jars-conserved',
      withLoad(0, (load) => ({ batchParts: load.batchParts.map((part) => ({ ...part, jars: { low: 1, typical: 1, high: 1 } })) })),
    ],
    ['kettle-use', withBatch(() => ({ kettleId: 'K4' }))],
    ['duration', withTask(kind('cook', 'plum-jam'), (task) => ({ end: task.end - 5 }))],
    ['duration', withTask(kind('prep', 'plum-jam'), (task) => ({ start: task.end - 1 }))],
    ['team', withTask(kind('wash'), () => ({ peopleIds: ['p8', 'p9'] }))],
    ['order', withTask(kind('prep', 'plum-jam'), (task) => ({ start: task.start + 60, end: task.end + 60 }))],
    ['order', withTask(kind('wash', 'plum-jam'), (task) => ({ start: task.start + 60, end: task.end + 60 }))],
    ['order', withLoad(jamLoad, (load) => shifted(load, -20))],
    ['filled-to-loaded', withLoad(plan.loads.length - 1, (load) => shifted(load, 16))],
    ['process', withLoad(jamLoad, () => ({ processMinutes: 4 }))],
    ['cycle', withLoad(jamLoad, (load) => ({ processEndAt: load.processEndAt - 3 }))],
    ['cycle', withLoad(pickleLoad, (load) => ({ boilAt: load.boilAt - 10 }))],
    ['method', withLoad(jamLoad, () => ({ method: 'pressure' }))],
    ['jar-size', withLoad(jamLoad, () => ({ jarSize: 'quart' }))],
    [
      'mixed-load',
      withLoad(jamLoad, (load) => ({
        batchParts: [...load.batchParts, { batchId: 'dill-pickles/1', jars: { low: 1, typical: 1, high: 1 } }],
      })),
    ],
    [
      'canner-capacity',
      withLoad(pickleLoad, (load) => ({
        batchParts: load.batchParts.map((part) => ({ ...part, jars: { low: 7, typical: 8, high: 10 } })),
      })),
    ],
    ['first-load', withLoad(0, (load) => shifted(load, -1))],
    ['canners-empty-by', withLoad(plan.loads.length - 1, (load) => shifted(load, 11))],
    ['canner-twice', withLoad(2, (load) => shifted(load, -1))],
    ['kettle-twice', withBatch((batch) => ({ cookStart: batch.cookStart + 40, fillEnd: batch.fillEnd + 60 }))],
    [
      'fill-table-twice',
      withTask(kind('fill', 'plum-jam'), () => {
        const other = plan.tasks.find(kind('fill', 'dill-pickles'))
        return { start: other?.start, end: other?.end }
      }),
    ],
    ['fill-table', withTask(kind('fill'), () => ({ tableIndex: 3 }))],
    ['burner-use', withTask(kind('cook', 'plum-jam'), () => ({ burnerId: 'E1' }))],
    ['burner-twice', withTask(kind('cook', 'plum-jam'), () => ({ burnerId: 'R1' }))],
    ['on-heat', withTask(kind('fill'), () => ({ burnerId: null }))],
    [
      'canner-moved',
      withTask(
        (task) => task.kind === 'load',
        () => ({ burnerId: 'R3' }),
      ),
    ],
    ['preheat', { ...plan, tasks: plan.tasks.filter((task) => task.kind !== 'preheat') }],
    ['access', withTask(kind('preheat'), (task) => ({ start: task.start - 60 }))],
    ['hours', withTask(kind('cook', 'plum-jam'), () => ({ start: 1000, end: 1020 }))],
    ['minor', withTask(kind('prep', 'plum-jam'), () => ({ peopleIds: ['p8'] }))],
    [
      'lifting',
      withTask(
        (task) => task.kind === 'load',
        () => ({ peopleIds: ['p4'] }),
      ),
    ],
    ['seated', withTask(kind('fill', 'plum-jam'), () => ({ peopleIds: ['p6'] }))],
    ['allergy', withTask(kind('fill', 'dill-pickles'), () => ({ peopleIds: ['p5'] }))],
    ['skill', withTask(kind('cook', 'plum-jam'), () => ({ peopleIds: ['p2'] }))],
    ['nobody', withTask(kind('fill'), () => ({ peopleIds: [] }))],
    ['person', withTask(kind('fill'), () => ({ peopleIds: ['p99'] }))],
    [
      'two-places',
      withTask(kind('label'), () => {
        const cook = plan.tasks.find(kind('cook', 'plum-jam'))
        return { start: cook?.start, end: cook?.end, peopleIds: ['p3'] }
      }),
    ],
    ['operator-skill', withLoad(0, () => ({ operatorId: 'p2' }))],
    [
      'operator-away',
      withTask(kind('label'), (task) => ({ peopleIds: [plan.loads[0]?.operatorId ?? ''], start: 1090, end: 1090 + task.end - task.start })),
    ],
    ['briefing', { ...plan, tasks: plan.tasks.filter((task) => task.kind !== 'brief') }],
    ['briefing', withTask(kind('wash'), (task) => ({ start: 1036, end: 1036 + task.end - task.start }))],
    ['night-before', { ...plan, nightBefore: plan.nightBefore.slice(1) }],
    ['night-before', { ...plan, nightBefore: plan.nightBefore.map((step) => ({ ...step, startAt: step.startAt + 60 })) }],
    ['allergy', { ...plan, nightBefore: plan.nightBefore.map((step) => ({ ...step, householdId: 'dunmarrow' })) }],
    ['finish', { ...plan, finishAt: plan.finishAt - 1 }],
    ['bound', { ...plan, lowerBound: plan.finishAt + 1 }],
    ['clean-up', { ...plan, tasks: plan.tasks.filter((task) => task.kind !== 'clean-up') }],
    ['hard-end', withTask(kind('clean-up'), (task) => ({ start: task.start + 15, end: task.end + 15 }))],
    ['tasks', { ...plan, tasks: plan.tasks.filter((task) => task.kind !== 'process') }],
  ]
  it.each(damages)('objects with %s', (rule, damaged) => {
    expect(checkDayPlan(s1DayProblem, damaged).map((violation) => violation.rule)).toContain(rule)
  })

  const stricter: readonly (readonly [rule: string, problem: DayProblem])[] = [
    ['rack', { ...s1DayProblem, rackJars: 83 }],
    ['load-by', { ...s1DayProblem, preparations: s1DayProblem.preparations.map((entry) => ({ ...entry, loadBy: 1090 })) }],
    ['only-canners', { ...s1DayProblem, preparations: s1DayProblem.preparations.map((entry) => ({ ...entry, onlyCannerIds: ['BW1'] })) }],
    ['headcount', { ...s1DayProblem, window: { ...s1DayProblem.window, headcountLimit: 8 } }],
    ['canner', { ...s1DayProblem, canners: s1DayProblem.canners.map((canner) => ({ ...canner, usable: false })) }],
    ['kettle-volume', { ...s1DayProblem, kettles: s1DayProblem.kettles.map((kettle) => ({ ...kettle, litres: 2 })) }],
    ['circuit', { ...s1DayProblem, circuits: [{ id: 'E1', watts: 1500 }] }],
    ['operator-canners', { ...s1DayProblem, minding: s1DayProblem.minding.map((rule) => ({ ...rule, cannersAtOnce: 0 })) }],
    ['operator-hours', { ...s1DayProblem, people: s1DayProblem.people.map((person) => ({ ...person, until: 1200 })) }],
    [
      'cooked-to-filling',
      { ...s1DayProblem, preparations: s1DayProblem.preparations.map((entry) => ({ ...entry, cookedToFillingLimitMinutes: -1 })) },
    ],
    [
      'jars-boiled',
      {
        ...s1DayProblem,
        preparations: s1DayProblem.preparations.map((entry) => ({ ...entry, jarTreatment: 'boiled-in-canner' as const })),
      },
    ],
    ['vent', { ...s1DayProblem, preparations: s1DayProblem.preparations.map((entry) => ({ ...entry, method: 'pressure' as const })) }],
  ]
  it.each(stricter)('objects with %s when the day is stricter than the plan knew', (rule, problem) => {
    expect(checkDayPlan(problem, plan).map((violation) => violation.rule)).toContain(rule)
  })
})
