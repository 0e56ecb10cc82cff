import { describe, expect, it } from 'vitest'
import type { TaskActual } from '@/shared/planning/day-plan'
import { forecastLoads } from '@/shared/planning/forecast-loads'
import { dueTasks, nowNextAfter } from '@/shared/planning/now-next-after'
import { planDay } from '@/shared/planning/plan-day'
import { heatOutlineOf, wallChart } from '@/shared/planning/wall-chart'
import { parseClock } from '@/shared/time/kitchen-time'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const at = (clock: string) => {
  const parsed = parseClock(clock)
  return parsed.ok ? parsed.value : Number.NaN
}
const answer = planDay(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value
const [first, second] = plan.loads
if (!first || !second) throw new Error('the evening has no loads')

const logged = (
  loadCode: string,
  cannerId: string,
  loadedAt: string,
  boilAt: string | null = null,
  emptyAt: string | null = null,
): TaskActual => {
  const boil = boilAt === null ? null : at(boilAt)
  return {
    loadCode,
    cannerId,
    loadedAt: at(loadedAt),
    boilAt: boil,
    processEndAt: emptyAt && boil !== null ? boil + 10 : null,
    emptyAt: emptyAt ? at(emptyAt) : null,
    jarsIn: 7,
  }
}

describe('the wall chart of an evening that has not begun', () => {
  const chart = wallChart(s1DayProblem, plan)

  it('has stations down in the order food moves', () => {
    expect(chart.rows.map((row) => row.label)).toEqual([
      'Kettle 1',
      'Kettle 2',
      'Kettle 3',
      'Fill table',
      'Canner 1',
      'Rack',
      'Canner 2',
      'Rack',
    ])
  })

  it('has a bar in a kettle and one on the fill table for each batch', () => {
    expect(chart.bars).toHaveLength(20)
    expect(new Set(chart.bars.filter((bar) => bar.stage === 'cook').map((bar) => bar.code))).toEqual(
      new Set(['J1', 'J2', 'J3', 'J4', 'J5', 'J6', 'D1', 'D2', 'D3', 'D4']),
    )
    expect(chart.bars.every((bar) => bar.progress === 'to-come')).toBe(true)
  })

  it('draws the heat of a jam load as low step, slope, block, half step, low step', () => {
    const jam = chart.profiles.find((profile) => profile.preparationId === 'plum-jam' && profile.outline[0]?.at === at('18:00'))
    expect(jam?.outline.map(({ at: minute, level }) => [minute - at('18:00'), level])).toEqual([
      [0, 0],
      [0, 0.12],
      [5, 0.12],
      [17, 1],
      [27, 1],
      [27, 0.35],
      [32, 0.35],
      [32, 0.12],
      [37, 0.12],
      [37, 0],
    ])
    expect(jam?.block).toEqual({ start: at('18:17'), end: at('18:27'), minutes: 10 })
  })

  it('gives a pressure load a shelf for venting and a falling slope for the cool-down', () => {
    const load = {
      ...first,
      method: 'pressure' as const,
      loadAt: 0,
      heatAt: 5,
      ventAt: 17,
      ventEndAt: 27,
      boilAt: 31,
      processEndAt: 51,
      restEndAt: 91,
      emptyAt: 96,
    }
    const outline = heatOutlineOf({ load, loadAt: 0, heatAt: 5, boilAt: 31, processEndAt: 51, restEndAt: 91, emptyAt: 96 })
    expect(outline.map((point) => [point.at, Math.round(point.level * 100)])).toEqual([
      [0, 0],
      [0, 12],
      [5, 12],
      [17, 67],
      [27, 67],
      [31, 100],
      [51, 100],
      [91, 12],
      [96, 12],
      [96, 0],
    ])
  })

  it('lets every batch fall from kettle to table to canner to rack, never back in time', () => {
    for (const batch of plan.batches) {
      const falls = chart.falls.filter((fall) => fall.batchId === batch.id)
      expect(falls).toHaveLength(3)
      for (const fall of falls) expect(fall.to.at).toBeGreaterThanOrEqual(fall.from.at)
    }
    expect(chart.falls.filter((fall) => fall.wait).every((fall) => fall.wait && !fall.wait.late && fall.to.at <= fall.wait.stopAt)).toBe(
      true,
    )
  })

  it('closes with slack, double line, clean-up and closed hall', () => {
    expect([chart.slack?.from, chart.slack?.to]).toEqual([at('21:25'), at('21:35')])
    expect([chart.emptyBy, chart.cleanUp.to, chart.closedFrom]).toEqual([at('21:35'), at('22:15'), at('22:15')])
    expect([chart.spareMinutes, chart.lateMinutes]).toEqual([10, 0])
  })

  it('lays the critical chain under loads that hand over without a minute between', () => {
    expect(chart.criticalChain[0]?.from).toBe(at('18:00'))
    expect(chart.criticalChain.at(-1)?.to).toBe(at('21:25'))
    for (const [index, link] of chart.criticalChain.slice(1).entries()) expect(link.from).toBe(chart.criticalChain[index]?.to)
  })

  it('draws the soak from the evening before with the households', () => {
    expect(chart.soaks.map((soak) => [soak.household, soak.start])).toEqual([
      ['Alderby', at('20:00') - 1440],
      ['Fennick', at('20:00') - 1440],
    ])
  })
})

describe('the wall chart of an evening that runs late', () => {
  const actuals = [logged(first.code, first.cannerId, '18:02', '18:26', '18:46'), logged(second.code, second.cannerId, '18:06')]

  it('keeps what was logged and moves what is to come', () => {
    const chart = wallChart(s1DayProblem, plan, actuals, at('18:50'))
    const [done, running] = chart.profiles
    expect(done).toMatchObject({ progress: 'done', jars: 7, block: { start: at('18:26'), end: at('18:36') } })
    // it should have boiled by 18:23 and has not: now at the earliest, then its full 10 minutes
    expect(running).toMatchObject({ progress: 'running', block: { start: at('18:50'), end: at('19:00') }, minutesLeft: null })
    expect(chart.finishAt).toBeGreaterThan(plan.finishAt)
    expect(chart.lateMinutes).toBe(chart.finishAt - plan.finishAt)
    expect(chart.chips.map((chip) => chip.label)).toEqual(['+2', '+6'])
  })

  it('never lets a canner begin a load before it is empty', () => {
    for (const minute of [1080, 1100, 1130, 1200, 1290]) {
      const loads = forecastLoads(plan, actuals, minute)
      for (const canner of ['BW1', 'BW2']) {
        const mine = loads.filter((load) => load.cannerId === canner).sort((a, b) => a.loadAt - b.loadAt)
        for (const [index, load] of mine.slice(1).entries()) expect(load.loadAt).toBeGreaterThanOrEqual(mine[index]?.emptyAt ?? 0)
      }
    }
  })

  it('never makes a process shorter than planned', () => {
    for (const load of forecastLoads(plan, actuals, at('19:30'))) expect(load.processEndAt - load.boilAt).toBeGreaterThanOrEqual(10)
  })

  it('counts the minutes left while a process runs', () => {
    const boiling = [logged(first.code, first.cannerId, '18:00', '18:24')]
    expect(wallChart(s1DayProblem, plan, boiling, at('18:29')).profiles[0]?.minutesLeft).toBe(5)
  })
})

describe('nowNextAfter', () => {
  it('gives Cleo her three lines in order of time', () => {
    const lines = nowNextAfter(plan, [], 'p3', at('17:20'))
    expect(lines.now?.task.kind).toBe('brief')
    expect(lines.next && lines.after && lines.next.start <= lines.after.start).toBe(true)
    expect([lines.next, lines.after].every((due) => due?.task.peopleIds.includes('p3'))).toBe(true)
  })

  it('moves work that belongs to a late load', () => {
    const load = plan.loads.find((entry) => entry.loadAt > at('18:30')) ?? first
    const before = plan.loads.find((entry) => entry.cannerId === load.cannerId && entry.emptyAt === load.loadAt) ?? first
    const late = [{ ...logged(before.code, before.cannerId, '18:20'), jarsIn: null }]
    const onTime = nowNextAfter(plan, [], load.loaderId, at('18:21'))
    const moved = nowNextAfter(plan, late, load.loaderId, at('18:21'))
    const startOf = (lines: typeof moved) => [lines.now, lines.next, lines.after].find((due) => due?.task.id === `load/${load.id}`)?.start
    expect(load.loadAt).toBeLessThan(forecastLoads(plan, late, at('18:21')).find((entry) => entry.load === load)?.loadAt ?? 0)
    expect(startOf(moved) ?? Number.POSITIVE_INFINITY).toBeGreaterThan(startOf(onTime) ?? 0)
  })

  it('gives the minding of a canner to whoever took it over, and takes it from whoever was planned', () => {
    const taken = { ...logged(first.code, first.cannerId, '18:00'), operatorId: 'p5' }
    const minders = (actuals: readonly TaskActual[]) =>
      new Set(
        dueTasks(plan, actuals, first.loadAt + 1)
          .filter(({ task }) => task.loadId === first.id && ['come-up', 'process', 'rest'].includes(task.kind))
          .flatMap(({ task }) => task.peopleIds),
      )
    expect(minders([])).toEqual(new Set([first.operatorId]))
    expect(minders([taken])).toEqual(new Set(['p5']))
  })

  it('has nothing left for anybody when the evening is over', () => {
    const all = plan.loads.map((load) => ({
      loadCode: load.code,
      cannerId: load.cannerId,
      loadedAt: load.loadAt,
      boilAt: load.boilAt,
      processEndAt: load.processEndAt,
      emptyAt: load.emptyAt,
      jarsIn: 8,
    }))
    expect(nowNextAfter(plan, all, null, at('22:15'))).toEqual({ now: null, next: null, after: null })
  })
})
