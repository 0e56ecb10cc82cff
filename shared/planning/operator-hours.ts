import { METHODS, type Method } from '@/shared/kitchen/methods'
import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerMinutesOfMethod } from '@/shared/planning/finish-bound'
import type { Stop } from '@/shared/planning/refuse-day'
import type { SplitJob } from '@/shared/planning/split-demand'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * Refuses a day whose canners stand still too long because nobody trained is there to mind them, by counting alone; null when it may fit.
 *
 * At each minute no more canners can run than the people who are there may mind. Told from the minute at which fewest are there.
 */
export function operatorHoursStop(problem: DayProblem, jobs: readonly SplitJob[]): Stop | null {
  for (const method of METHODS) {
    const { needed } = cannerMinutesOfMethod(problem, jobs, method)
    const minding = problem.minding.find((entry) => entry.method === method)
    if (needed === 0 || !minding) continue
    const canners = problem.canners.filter((canner) => canner.usable && canner.method === method).length
    const stretches = stretchesOf(problem, method, minding.skill)
    const minutes = stretches.reduce((sum, { from, to, there }) => sum + (to - from) * Math.min(canners, there * minding.cannersAtOnce), 0)
    const anybody = stretches.some(({ there }) => there > 0)
    if (minutes >= needed || !anybody) continue
    const [fewest] = [...stretches].sort((a, b) => a.there - b.there || a.from - b.from)
    const limit = { kind: 'people-with-skill' as const, skills: [minding.skill], stage: 'process' as const, preparationId: null }
    return {
      limit,
      needed: Math.ceil(canners / minding.cannersAtOnce),
      available: fewest?.there ?? 0,
      ...(fewest ? { at: fewest.from } : {}),
    }
  }
  return null
}

type Stretch = { readonly from: KitchenTime; readonly to: KitchenTime; readonly there: number }

/** The canners' hours, cut wherever somebody who may mind them comes or goes. */
function stretchesOf({ people, preparations, window }: DayProblem, method: Method, skill: string): Stretch[] {
  const able = people
    .filter((person) => preparations.some((entry) => entry.method === method && mayDo(person, 'process', [skill], entry)))
    .map((person) => ({ from: Math.max(person.from, window.peopleArriveAt) + window.briefingMinutes, until: person.until }))
  const inside = able
    .flatMap(({ from, until }) => [from, until])
    .filter((time) => time > window.firstLoadAt && time < window.cannersEmptyBy)
  const cuts = [...new Set([window.firstLoadAt, ...inside, window.cannersEmptyBy])].sort((a, b) => a - b)
  return cuts.slice(1).map((to, index) => {
    const from = cuts[index] ?? to
    return { from, to, there: able.filter((hours) => hours.from <= from && to <= hours.until).length }
  })
}
