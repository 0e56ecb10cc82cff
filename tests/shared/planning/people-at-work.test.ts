import { describe, expect, it } from 'vitest'
import { COMMON_BREAKS, freeIn, leavesRest, restRuleOf } from '@/shared/planning/breaks'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import { setUpKitchen } from '@/shared/planning/kitchen-set-up'
import { languageCover } from '@/shared/planning/language-cover'
import { nothingSoFar } from '@/shared/planning/day-so-far'
import { planOnce } from '@/shared/planning/plan-once'
import { replanDay } from '@/shared/planning/replan-day'
import { shareWork, unfairness, workShares } from '@/shared/planning/share-work'
import { parseClock } from '@/shared/time/kitchen-time'
import { dillPickles, plumJam, s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'

const at = (clock: string) => {
  const parsed = parseClock(clock)
  return parsed.ok ? parsed.value : Number.NaN
}
const planned = (problem: DayProblem): DayPlan => {
  const answer = planOnce(problem)
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.problem.limit)}`)
  return answer.value
}
const rulesBroken = (problem: DayProblem, plan: DayPlan) => new Set(checkDayPlan(problem, plan).map(({ rule }) => rule))
const changePerson = (id: string, change: Partial<PlanPerson>, problem = s1DayProblem): DayProblem => ({
  ...problem,
  people: problem.people.map((person) => (person.id === id ? { ...person, ...change } : person)),
})

describe('breaks', () => {
  /** The same work in a day of nine hours. */
  const longDay: DayProblem = {
    ...s1DayProblem,
    window: { ...s1DayProblem.window, accessAt: at('12:30'), peopleArriveAt: at('13:00'), firstLoadAt: at('14:00') },
    people: s1DayProblem.people.map((person) =>
      person.ageClass === 'adult' ? { ...person, from: at('13:00'), until: at('22:15') } : person,
    ),
  }

  it('are planned for everybody who is there for more than six hours, near the middle of their time', () => {
    const plan = planned(longDay)
    const breaks = plan.tasks.filter((task) => task.kind === 'break')
    expect(breaks.flatMap((task) => task.peopleIds).sort()).toEqual(['p1', 'p2', 'p3', 'p4', 'p5', 'p6', 'p7'])
    for (const pause of breaks) {
      expect(pause.end - pause.start).toBe(COMMON_BREAKS.minutes)
      expect(Math.abs((pause.start + pause.end) / 2 - (at('13:00') + at('22:15')) / 2)).toBeLessThanOrEqual(76)
    }
    expect(checkDayPlan(longDay, plan)).toEqual([])
  })

  it('are none on an evening of five hours, and none where the day asks for none', () => {
    expect(planned(s1DayProblem).tasks.filter((task) => task.kind === 'break')).toEqual([])
    expect(planned({ ...longDay, breaks: null }).tasks.filter((task) => task.kind === 'break')).toEqual([])
  })

  it('follow the rule of the day', () => {
    const strict = { ...s1DayProblem, breaks: { longerThanMinutes: 240, minutes: 15, longestStretchMinutes: 300 } }
    const plan = planned(strict)
    expect(plan.tasks.filter((task) => task.kind === 'break').length + plan.shortages.filter((gap) => gap.kind === 'break').length).toBe(5) // Ada, Cleo, Esme, Flora and Gil
    expect(checkDayPlan(strict, plan)).toEqual([])
  })

  it('are one over six hours and two over twelve', () => {
    const windows = (until: string) => restRuleOf(s1DayProblem, { from: at('10:00'), until: at(until) })
    const day = { ...s1DayProblem, window: { ...s1DayProblem.window, peopleArriveAt: at('08:00') } }
    expect(windows('15:00')).toBeUndefined()
    expect(restRuleOf(day, { from: at('08:00'), until: at('14:00') })?.windows).toEqual([])
    expect(restRuleOf(day, { from: at('08:00'), until: at('14:01') })?.windows).toHaveLength(1)
    expect(restRuleOf(day, { from: at('08:00'), until: at('20:01') })?.windows).toHaveLength(2)
  })

  it('keep their last free half hour, and a stretch of work under its limit', () => {
    const rule = { windows: [{ from: 600, to: 720, minutes: 30 }], longestStretchMinutes: 300 }
    const busy = [{ start: 600, end: 660 }]
    expect(leavesRest(rule, busy, { start: 660, end: 690 })).toBe(true)
    expect(leavesRest(rule, busy, { start: 675, end: 700 })).toBe(false)
    expect(leavesRest({ ...rule, windows: [] }, [{ start: 100, end: 300 }], { start: 305, end: 401 })).toBe(false)
    expect(leavesRest({ ...rule, windows: [] }, [{ start: 100, end: 300 }], { start: 310, end: 401 })).toBe(true) // ten minutes are a pause
    expect(freeIn({ from: 600, to: 720, minutes: 30 }, busy)).toBe(660)
    expect(freeIn({ from: 600, to: 720, minutes: 30 }, [{ start: 610, end: 705 }])).toBeNull()
  })

  it('are missed by the checker when they are taken out, worked in, too short or at the wrong time', () => {
    const plan = planned(longDay)
    const changed = (change: (task: DayPlan['tasks'][number]) => DayPlan['tasks'][number]): DayPlan => ({
      ...plan,
      tasks: plan.tasks.map((task) => (task.kind === 'break' && task.peopleIds.includes('p3') ? change(task) : task)),
    })
    expect(rulesBroken(longDay, { ...plan, tasks: plan.tasks.filter((task) => task.kind !== 'break') })).toContain('break')
    expect(
      rulesBroken(
        longDay,
        changed((task) => ({ ...task, end: task.start + 10 })),
      ),
    ).toContain('break')
    expect(
      rulesBroken(
        longDay,
        changed((task) => ({ ...task, start: at('21:40'), end: at('22:10') })),
      ),
    ).toContain('break')
    const work = plan.tasks.find((task) => task.kind === 'cook' && task.peopleIds.includes('p3'))
    expect(
      rulesBroken(
        longDay,
        changed((task) => ({ ...task, start: work?.start ?? 0, end: (work?.start ?? 0) + 30 })),
      ),
    ).toContain('break')
    expect(rulesBroken({ ...s1DayProblem, breaks: { ...COMMON_BREAKS, longestStretchMinutes: 60 } }, planned(s1DayProblem))).toContain(
      'stretch',
    )
  })
})

describe('who may do what', () => {
  const plan = planned(s1DayProblem)
  const tasksOf = (id: string, of = plan) => of.tasks.filter((task) => task.peopleIds.includes(id))

  it('keeps every minor from heat and knives, whatever they can', () => {
    const able = changePerson('p8', { skills: ['prep', 'jam', 'brine', 'fill', 'boiling-water-operator', 'wash'] })
    expect(tasksOf('p8', planned(able)).every((task) => ['brief', 'wash', 'label', 'clean-up', 'break'].includes(task.kind))).toBe(true)
  })

  it('never lets a person lift who may not, and lets nobody stand who works at a seat', () => {
    const strong = changePerson('p7', { limits: ['no-lifting'] })
    expect(tasksOf('p7', planned(strong)).some((task) => task.kind === 'load' || task.kind === 'unload')).toBe(false)
    expect(tasksOf('p6').every((task) => ['brief', 'prep', 'wash', 'label'].includes(task.kind))).toBe(true)
  })

  it('keeps a person off every open station of a food that they are allergic to', () => {
    const allergic = changePerson('p2', { allergies: ['mustard'] })
    const withoutMustard = planned(allergic)
    const pickles = new Set(withoutMustard.batches.filter((batch) => batch.preparationId === 'dill-pickles').map((batch) => batch.id))
    for (const task of tasksOf('p2', withoutMustard)) if (pickles.has(task.batchId ?? '')) expect(['wash', 'label']).toContain(task.kind)
    expect(checkDayPlan(allergic, withoutMustard)).toEqual([])
  })

  it('keeps a pressure operator at the canner for the whole load', () => {
    const pressure: DayProblem = {
      ...s1DayProblem,
      canners: [{ ...(s1DayProblem.canners[0] as DayProblem['canners'][number]), id: 'PC', method: 'pressure', gauge: 'weighted' }],
      minding: [{ method: 'pressure', skill: 'boiling-water-operator', cannersAtOnce: 1, alongside: 'nothing' }],
      preparations: [{ ...plumJam, method: 'pressure', jarsWanted: 16, cycle: { ...plumJam.cycle, ventMinutes: 10 } }],
    }
    const minded = planned(pressure)
    expect(minded.loads.length).toBeGreaterThan(0)
    for (const load of minded.loads) {
      const operator = pressure.people.find((person) => person.id === load.operatorId)
      expect([operator && operator.from <= load.loadAt, operator && operator.until >= load.emptyAt]).toEqual([true, true])
      for (const task of tasksOf(load.operatorId, minded))
        if (task.loadId !== load.id && task.kind !== 'brief') expect(task.end <= load.loadAt || task.start >= load.emptyAt).toBe(true)
    }
    expect(
      rulesBroken(changePerson(minded.loads[0]?.operatorId ?? '', { until: (minded.loads[0]?.emptyAt ?? 0) - 1 }, pressure), minded),
    ).toContain('operator-hours')
  })

  it('washes a kettle between two batches, and boils jars first where the process is short', () => {
    const washing = { ...s1DayProblem, kettles: s1DayProblem.kettles.map((kettle) => ({ ...kettle, washMinutes: 6 })) }
    const clean = planned(washing)
    for (const kettle of washing.kettles) {
      const inIt = clean.batches.filter((batch) => batch.kettleId === kettle.id).sort((a, b) => a.cookStart - b.cookStart)
      for (const [index, batch] of inIt.slice(1).entries()) expect(batch.cookStart).toBeGreaterThanOrEqual((inIt[index]?.fillEnd ?? 0) + 6)
    }
    const short = {
      ...plumJam,
      jarsWanted: 16,
      jarTreatment: 'boiled-in-pot' as const,
      process: { ...plumJam.process, minutes: 5, sterilise: true },
    }
    const boiled = planned({ ...s1DayProblem, preparations: [short, { ...dillPickles, jarsWanted: 8 }] })
    for (const batch of boiled.batches.filter((entry) => entry.preparationId === 'plum-jam')) {
      const boil = boiled.tasks.find((task) => task.kind === 'jar-heat' && task.batchId === batch.id)
      expect(batch.fillStart - (boil?.start ?? batch.fillStart)).toBeGreaterThanOrEqual(10)
    }
  })
})

describe('languages', () => {
  it('give Flora somebody who speaks Spanish with her and English with the crew', () => {
    const plan = planned(s1DayProblem)
    const hers = plan.tasks.filter((task) => task.kind === 'prep' && task.peopleIds.includes('p6'))
    expect(hers.length).toBeGreaterThan(0)
    for (const task of hers) expect(plan.languageHelp).toContainEqual({ taskId: task.id, personId: 'p6', helperId: 'p7' })
  })

  it('are said to be missing when nobody speaks both', () => {
    const problem = changePerson('p7', { languages: ['en'] })
    const plan = planned(problem)
    const gap = plan.shortages.find((shortage) => shortage.kind === 'language')
    expect(gap).toMatchObject({ personId: 'p6', language: 'es' })
    expect(checkDayPlan(problem, plan)).toEqual([])
    expect(rulesBroken(problem, { ...plan, shortages: [] })).toContain('language')
  })

  it('need no helper where the crew share one', () => {
    const problem = changePerson('p6', { languages: ['en', 'es'] })
    const { help, gaps } = languageCover(problem, planned(problem))
    expect([help, gaps]).toEqual([[], []])
  })

  it('give a helper too to whoever speaks with nobody while the other is understood by a third who comes later', () => {
    const problem = changePerson('p4', { languages: ['es'] })
    const plan = planned(problem)
    const some = plan.tasks.find(({ kind, batchId }) => kind === 'prep' && batchId?.startsWith('plum-jam'))
    if (!some) throw new Error('plums are cut')
    const cut = (id: string, personId: string, from: string, until: string) => ({
      ...{ ...some, id, start: at(from), end: at(until), peopleIds: [personId] },
    })
    const tasks = [cut('a', 'p5', '18:00', '19:00'), cut('b', 'p6', '18:30', '19:30'), cut('c', 'p4', '19:00', '19:30')]
    expect(languageCover(problem, { ...plan, tasks }).help).toEqual([{ taskId: 'a', personId: 'p5', helperId: 'p7' }])
  })

  it('are covered where a load is fixed at another minute', () => {
    const locks = [{ preparationId: 'plum-jam', batch: 6, task: 'load' as const, at: at('20:15'), equipmentId: null, personId: null }]
    const again = replanDay({ ...s1DayProblem, locks }, planned(s1DayProblem), nothingSoFar(s1DayProblem.window.accessAt))
    if (!again.ok) throw new Error('the load may stand at 20:15')
    expect(checkDayPlan(again.value.problem, again.value.plan)).toEqual([])
  })

  it('never send a helper to a food that they are allergic to', () => {
    const problem = changePerson('p7', { allergies: ['plum'] })
    const withPlums = {
      ...problem,
      preparations: problem.preparations.map((entry) => (entry.id === 'plum-jam' ? { ...entry, allergens: ['plum'] } : entry)),
    }
    const helped = planned(withPlums).languageHelp?.filter((entry) => entry.taskId.includes('plum-jam')) ?? []
    expect(helped.some((entry) => entry.helperId === 'p7')).toBe(false)
  })
})

describe('the sharing of work', () => {
  const plan = planned(s1DayProblem)
  const { hours } = setUpKitchen(s1DayProblem, s1DayProblem.canners)

  it('counts hands and minding against the minutes that somebody is there, and two things at once only once', () => {
    const task = (start: number, end: number) => ({
      ...(plan.tasks[0] as DayPlan['tasks'][number]),
      kind: 'wash' as const,
      start,
      end,
      peopleIds: ['p1'],
    })
    const [ada] = workShares(hours, [task(1080, 1100), task(1090, 1110)])
    expect(ada).toEqual({
      personId: 'p1',
      workMinutes: 30,
      availableMinutes: at('22:15') - at('17:30'),
      share: 30 / (at('22:15') - at('17:30')),
    })
  })

  it('makes shares more alike and moves no minute, no kettle and no canner', () => {
    const lumped = {
      ...plan,
      tasks: plan.tasks.map((task) => (task.kind === 'wash' || task.kind === 'label' ? { ...task, peopleIds: ['p5'] } : task)),
    }
    const preparationOf = ({ batchId }: DayPlan['tasks'][number]) =>
      s1DayProblem.preparations.find((entry) => entry.id === plan.batches.find((batch) => batch.id === batchId)?.preparationId) ?? null
    const shared = shareWork(s1DayProblem, hours, plan.loads, lumped.tasks, preparationOf)
    const busiest = (tasks: DayPlan['tasks']) =>
      Math.max(
        ...workShares(hours, tasks)
          .filter(({ personId }) => personId !== 'p1')
          .map(({ share }) => share),
      )
    expect(busiest(shared)).toBeLessThan(busiest(lumped.tasks))
    expect(unfairness(workShares(hours, shared))).toBeLessThanOrEqual(unfairness(workShares(hours, lumped.tasks)))
    for (const [index, task] of shared.entries()) {
      const before = lumped.tasks[index]
      expect({ ...task, peopleIds: [] }).toEqual({ ...before, peopleIds: [] })
      if (['cook', 'hold', 'load', 'unload', 'process'].includes(task.kind)) expect(task.peopleIds).toEqual(before?.peopleIds)
    }
  })

  it('leaves tasks alone that must stay', () => {
    expect(shareWork(s1DayProblem, hours, plan.loads, plan.tasks, () => null)).toEqual(plan.tasks)
  })
})
