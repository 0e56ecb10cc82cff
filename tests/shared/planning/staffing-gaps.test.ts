import { describe, expect, it } from 'vitest'
import type { DayProblem } from '@/shared/planning/day-problem'
import { planOnce } from '@/shared/planning/plan-once'
import { staffingGaps } from '@/shared/planning/staffing-gaps'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planOnce(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value

const without = (id: string): DayProblem => ({ ...s1DayProblem, people: s1DayProblem.people.filter((person) => person.id !== id) })
const leavingAt = (id: string, until: number): DayProblem => ({
  ...s1DayProblem,
  people: s1DayProblem.people.map((person) => (person.id === id ? { ...person, until } : person)),
})

describe('the staffing of an evening', () => {
  const staffing = staffingGaps(s1DayProblem, plan)

  it('has no gap while everybody comes', () => {
    expect(staffing.gaps).toEqual([])
  })

  it('has a row for every skill and a cell for every half hour, one after the other', () => {
    expect(staffing.rows.map((row) => row.skill).sort()).toEqual(
      ['boiling-water-operator', 'brine', 'clean-up', 'fill', 'jam', 'labels', 'lifting', 'prep', 'wash'].sort(),
    )
    for (const { cells } of staffing.rows)
      for (const [index, cell] of cells.entries()) {
        expect(cell.to - cell.from).toBe(30)
        if (index > 0) expect(cell.from).toBe(cells[index - 1]?.to)
      }
  })

  it('never wants more people of a skill than are there', () => {
    for (const { skill, cells } of staffing.rows)
      for (const cell of cells) expect(cell.present, `${skill} at ${cell.from}`).toBeGreaterThanOrEqual(cell.wanted)
  })

  it('wants one operator for two canners, and has Ada and Gil', () => {
    const row = staffing.rows.find(({ skill }) => skill === 'boiling-water-operator')
    expect(row?.cells.find((cell) => cell.from === 19 * 60)).toMatchObject({ wanted: 1, present: 2 })
  })

  it('calls nobody free who works in that half hour', () => {
    for (const { cells } of staffing.rows)
      for (const cell of cells)
        for (const task of plan.tasks.filter((each) => each.start < cell.to && cell.from < each.end))
          expect(task.peopleIds.some((id) => cell.freeIds.includes(id))).toBe(false)
  })
})

describe('the staffing of an evening that lost somebody', () => {
  it('names every task of Cleo, who cooks the jam, and nobody free to take it', () => {
    const { gaps, rows } = staffingGaps(without('p3'), plan)
    const hers = plan.tasks.filter(
      (task) => task.peopleIds.includes('p3') && ['cook', 'fill', 'prep', 'load', 'unload'].includes(task.kind),
    )
    expect(new Set(gaps.map((gap) => gap.taskId))).toEqual(new Set(hers.map((task) => task.id)))
    const cooking = gaps.filter((gap) => gap.kind === 'cook')
    expect(cooking.length).toBeGreaterThan(0)
    for (const gap of cooking) {
      expect(gap).toMatchObject({ skill: 'jam', preparationId: 'plum-jam', wanted: 1, namedIds: [], lostIds: ['p3'] })
      expect(gap.ask).toEqual([]) // Flora makes jam too, and sits
    }
    const jam = rows.find(({ skill }) => skill === 'jam')
    const lacking = jam?.cells.filter((cell) => cell.gaps.length > 0) ?? []
    expect(lacking.length).toBeGreaterThan(0)
    for (const cell of lacking) expect(cell.present).toBeLessThan(cell.wanted)
  })

  it('asks somebody to stay later where a helper leaves in the middle of a task', () => {
    const last = plan.tasks.filter((task) => task.kind === 'fill' && task.peopleIds.includes('p3')).at(-1)
    if (!last) throw new Error('Cleo fills nothing')
    const { gaps } = staffingGaps(leavingAt('p3', last.end - 3), plan)
    const gap = gaps.find((each) => each.taskId === last.id)
    expect(gap).toMatchObject({ lostIds: ['p3'], wanted: last.peopleIds.length })
    expect(gap?.ask).toContainEqual({ personId: 'p3', how: 'stay-later', minutes: 3, taskId: null })
  })

  it('never asks anybody who may not do it', () => {
    for (const { id } of s1DayProblem.people) {
      for (const gap of staffingGaps(without(id), plan).gaps) {
        const asked = gap.ask.map(({ personId }) => s1DayProblem.people.find((person) => person.id === personId))
        for (const person of asked) {
          if (gap.kind !== 'wash' && gap.kind !== 'label' && gap.kind !== 'clean-up') expect(person?.ageClass).toBe('adult')
          if (gap.preparationId === 'dill-pickles' && gap.kind !== 'wash' && gap.kind !== 'label') expect(person?.id).not.toBe('p5')
          if (gap.kind === 'load' || gap.kind === 'unload') expect(person?.limits).not.toContain('no-lifting')
        }
      }
    }
  })

  it('shows labels that found no minute, with who could be asked', () => {
    const [batch] = plan.batches
    if (!batch) throw new Error('no batch')
    const short = {
      ...plan,
      tasks: plan.tasks.filter((task) => !(task.kind === 'label' && task.batchId === batch.id)),
      shortages: [{ kind: 'hands' as const, stage: 'label' as const, batchId: batch.id, minutes: 8 }],
    }
    const [gap] = staffingGaps(s1DayProblem, short).gaps
    expect(gap).toMatchObject({ taskId: null, kind: 'label', batchId: batch.id, start: batch.cookStart, end: batch.cookStart + 8 })
    expect(gap?.ask.length).toBeGreaterThan(0)
  })
})
