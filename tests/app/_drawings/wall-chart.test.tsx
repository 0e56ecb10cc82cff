import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { HeatProfile } from '@/app/_drawings/heat-profile'
import { stepsOf } from '@/app/(member)/g/[groupId]/days/[dayId]/plan/steps'
import { loadsToLog } from '@/app/_drawings/plan-in-words'
import type { Produce } from '@/app/_drawings/produce'
import { WallChart } from '@/app/_drawings/wall-chart'
import { WallSteps } from '@/app/_drawings/wall-steps'
import { WallLog } from '@/app/_drawings/wall-log'
import type { TaskActual } from '@/shared/planning/day-plan'
import { planDay } from '@/shared/planning/plan-day'
import { wallChart } from '@/shared/planning/wall-chart'
import { formatClock } from '@/shared/time/kitchen-time'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planDay(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value
const firstLoad = plan.loads[0]
if (!firstLoad) throw new Error('the evening has no loads')

const produceOf = (preparationId: string): Produce => (preparationId.includes('jam') ? 'plum' : 'dill')
const count = (html: string, part: string) => html.split(part).length - 1

function draw(actuals: readonly TaskActual[] = [], now: number | null = null) {
  const chart = wallChart(s1DayProblem, plan, actuals, now)
  return renderToStaticMarkup(<WallChart chart={chart} produceOf={produceOf} listHref="/list" says="Finish 21:25, 10 min to spare." />)
}

const boilingSince = (load: typeof firstLoad, lateBy: number): TaskActual => ({
  ...{ loadCode: load.code, cannerId: load.cannerId, loadedAt: load.loadAt + lateBy, boilAt: load.boilAt + lateBy },
  ...{ processEndAt: null, emptyAt: null, jarsIn: 7 },
})

describe('WallChart', () => {
  it('leads to every task in words, by a link that whoever sees nothing meets after the drawing', () => {
    expect(draw()).toMatch(/<\/svg><\/section><a class="way wall-list" href="\/list">The timetable as a list<\/a>/)
  })

  it('has every task in its list, once, in the order of time', () => {
    const body = renderToStaticMarkup(<WallSteps steps={stepsOf({ problem: s1DayProblem, plan })} />).split('<tbody')[1] ?? ''
    expect(count(body, 'role="row"')).toBe(plan.tasks.length)
    const times = [...body.matchAll(/>(\d\d:\d\d) to /g)].map((match) => match[1])
    expect(times).toEqual([...times].sort())
    for (const load of plan.loads)
      expect(body).toContain(`${load.processMinutes} min at a full boil. Boil lost: the full time again. (${load.source.slice(0, 20)}`)
  })

  it('draws each batch on its kettle and each load in its canner', () => {
    const html = draw()
    for (const batch of plan.batches) expect(html).toContain(`>${batch.code}</text>`)
    expect(count(html, 'class="lb halo"')).toBe(plan.loads.length)
  })

  it('draws each soak above all bars, with its household and its batches', () => {
    const html = draw()
    const soaks = [...html.matchAll(/M0 (\d+)H[\d.]+" stroke="[^"]+" class="soak"/g)].map((match) => Number(match[1]))
    const bars = [...html.matchAll(/ y="(\d+)" width="[\d.]+" height="30"/g)].map((match) => Number(match[1]))
    expect(soaks).toHaveLength(plan.nightBefore.length)
    expect(bars).toHaveLength(plan.batches.length * 2)
    expect(Math.max(...soaks) + 14).toBeLessThan(Math.min(...bars))
    for (const { householdId, batchIds } of plan.nightBefore) {
      const codes = plan.batches.filter(({ id }) => batchIds.includes(id)).map(({ code }) => code)
      expect(html).toContain(`>${s1DayProblem.households.find(({ id }) => id === householdId)?.name} soaks</text>`)
      expect(html).toContain(`>${codes.join(' ')}</text>`)
    }
  })

  it('counts the jars of a load that ends at the double line and draws none of them', () => {
    const last = plan.loads.reduce((a, b) => (b.emptyAt > a.emptyAt ? b : a))
    const chart = wallChart(s1DayProblem, plan)
    const tight = { ...chart, emptyBy: last.emptyAt + 5 }
    const alone = { ...tight, profiles: tight.profiles.filter(({ loadId }) => loadId === last.id) }
    const html = renderToStaticMarkup(<WallChart chart={alone} produceOf={produceOf} listHref="/list" says="" />)
    expect(count(html, 'class="rack-jars"')).toBe(0)
    expect(count(draw(), 'class="rack-jars"')).toBeGreaterThan(0)
    expect(html).toContain(`class="rk halo">${last.batchParts.reduce((sum, part) => sum + part.jars.typical, 0)}</text>`)
  })

  it('keeps to the canners where a wall would be too crowded to read, and draws all elsewhere', () => {
    const chart = wallChart(s1DayProblem, plan)
    const canners = Array.from({ length: 12 }, (_, at) => ({ kind: 'canner' as const, id: `C${at}`, label: `C${at}`, person: 'Gil' }))
    const crowded = { ...chart, rows: [...chart.rows, ...canners] }
    const props = { chart: crowded, produceOf, listHref: '/list', says: '' }
    const wall = renderToStaticMarkup(<WallChart {...props} onWall />)
    const desk = renderToStaticMarkup(<WallChart {...props} />)
    const heightOf = (html: string) => Number(/viewBox="0 172 1920 (\d+)"/.exec(html)?.[1])
    expect(count(wall, 'class="lb crowd halo"')).toBe(plan.loads.length)
    expect(count(wall, 'class="rack-jars"') + count(wall, 'class="bt"') + count(wall, 'class="casing"')).toBe(0)
    expect(heightOf(wall)).toBeLessThanOrEqual(720)
    expect(count(desk, 'class="lb halo"')).toBe(plan.loads.length)
    expect(heightOf(desk)).toBeGreaterThan(1500)
    expect(renderToStaticMarkup(<WallChart {...props} chart={chart} onWall />)).not.toContain('crowd')
  })

  it('dashes nothing on a plan that has not begun', () => {
    const [, key = ''] = draw().split('minutes late')
    expect(count(draw(), 'to-come')).toBe(count(key, 'to-come'))
  })

  it('says what is left of a running process in place of its minutes, and how late it was', () => {
    const html = draw([boilingSince(firstLoad, 6)], firstLoad.boilAt + 6 + 4)
    expect(html).toContain(`${firstLoad.processMinutes - 4} min left`)
    expect(html).toContain('>+6</text>')
  })

  it('uses no style attribute, which the content policy would refuse', () => {
    expect(draw([boilingSince(firstLoad, 0)], firstLoad.boilAt + 1)).not.toMatch(/ style=/)
  })
})

describe('HeatProfile', () => {
  it('says each canner line and what it leaves spare', () => {
    const html = renderToStaticMarkup(<HeatProfile chart={wallChart(s1DayProblem, plan)} produceOf={produceOf} />)
    expect(html).toContain(`Canners must be empty ${formatClock(s1DayProblem.window.cannersEmptyBy)}.`)
    expect(count(html, ' spare</text>')).toBe(2)
  })
})

describe('WallLog', () => {
  it('gives every load blank boxes for its real times', () => {
    const html = renderToStaticMarkup(<WallLog loads={loadsToLog(s1DayProblem, plan)} />)
    expect(count(html, 'class="box"')).toBe(plan.loads.length * 6)
    expect(html).toContain(`${formatClock(firstLoad.loadAt)}, ${formatClock(firstLoad.boilAt)}`)
  })
})
