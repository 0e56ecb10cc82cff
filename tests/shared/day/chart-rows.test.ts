import { describe, expect, it } from 'vitest'
import { CHART_VIEWS, rowChart } from '@/shared/day/chart-rows'
import { planDay } from '@/shared/planning/plan-day'
import { wallChart } from '@/shared/planning/wall-chart'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planDay(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value

describe('the timetable from one side', () => {
  it.each(CHART_VIEWS)('by %s never puts two marks of a lane on one minute', (view) => {
    for (const row of rowChart(s1DayProblem, plan, view).rows)
      for (const lane of row.lanes)
        for (const [index, mark] of lane.entries()) if (index > 0) expect(mark.from).toBeGreaterThanOrEqual(lane[index - 1]?.to ?? 0)
  })

  it('by station has the rows of the wall without its racks, and the work at the tables', () => {
    const rows = rowChart(s1DayProblem, plan, 'station').rows.map(({ label }) => label)
    const onTheWall = wallChart(s1DayProblem, plan).rows.filter(({ kind }) => kind !== 'rack')
    expect(rows).toEqual([...onTheWall.map(({ label }) => label), 'Tables'])
  })

  it('by person gives everybody each task that names them once, minding a load as one stretch', () => {
    for (const row of rowChart(s1DayProblem, plan, 'person').rows) {
      const own = plan.tasks.filter(({ peopleIds }) => peopleIds.includes(row.id))
      const minded = own.filter(({ kind, attention }) => attention === 'watch' && ['come-up', 'process', 'rest'].includes(kind))
      const loads = new Set(minded.map(({ loadId }) => loadId))
      expect(row.lanes.flat()).toHaveLength(own.length - minded.length + loads.size)
    }
  })

  it('by product follows each batch from cutting to the canner that empties last', () => {
    const { rows, finishAt } = rowChart(s1DayProblem, plan, 'product')
    expect(rows.map(({ label }) => label).sort()).toEqual(plan.batches.map(({ code }) => code).sort())
    expect(
      Math.max(
        ...rows.flatMap(({ lanes }) =>
          lanes
            .flat()
            .filter((mark) => mark.kind === 'heat')
            .map(({ to }) => to),
        ),
      ),
    ).toBe(finishAt)
    for (const row of rows) expect(row.lanes.flat().map(({ kind }) => kind)).toEqual(expect.arrayContaining(['hands', 'heat']))
  })

  it('marks the loads of the binding chain, and no other load', () => {
    const chain = wallChart(s1DayProblem, plan).criticalChain.map(({ loadId }) => loadId)
    const marked = rowChart(s1DayProblem, plan, 'station').rows.flatMap(({ lanes }) =>
      lanes.flat().filter((mark) => mark.kind === 'heat' && mark.isCritical),
    )
    expect(marked.map(({ id }) => id).sort()).toEqual([...chain].sort())
  })

  it('moves a late load and what follows it, and calls what is over done', () => {
    const [first] = [...plan.loads].sort((a, b) => a.loadAt - b.loadAt)
    if (!first) return expect.unreachable()
    const late = {
      loadCode: first.code,
      cannerId: first.cannerId,
      loadedAt: first.loadAt + 9,
      boilAt: null,
      processEndAt: null,
      emptyAt: null,
      jarsIn: 7,
    }
    const chart = rowChart(s1DayProblem, plan, 'station', [late], first.loadAt + 10)
    const mark = chart.rows.flatMap(({ lanes }) => lanes.flat()).find(({ id }) => id === first.id)
    expect(mark).toMatchObject({ from: first.loadAt + 9, progress: 'running' })
    expect(chart.lateMinutes).toBeGreaterThanOrEqual(9)
    expect(chart.lateMinutes).toBe(wallChart(s1DayProblem, plan, [late], first.loadAt + 10).lateMinutes)
  })
})
