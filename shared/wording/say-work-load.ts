import type { DayProblem } from '@/shared/planning/day-problem'
import { minutesOfEachHour, mostAndLeast, type WorkLoad } from '@/shared/planning/work-load'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayWorkMinutes } from '@/shared/wording/say-what-if'

/** Up to so many minutes of each hour between the busiest and the least busy, work counts as evenly shared (common practice). */
const EVEN_MINUTES = 15

/** How evenly the work lies, with a next step where it does not: nobody is blamed for skills or hours. */
export function sayEvenness(problem: DayProblem, loads: readonly WorkLoad[]): string {
  const ends = mostAndLeast(loads)
  if (!ends) return ''
  const [high, low] = [minutesOfEachHour(ends.most), minutesOfEachHour(ends.least)]
  const range = `Of each hour that they are there, people work ${low === high ? `${low}` : `${low} to ${high}`} min.`
  if (high - low <= EVEN_MINUTES) return `${range} That is shared evenly.`
  const nameOf = (id: string) => problem.people.find((person) => person.id === id)?.name ?? 'Somebody'
  const [most, least] = [nameOf(ends.most.personId), nameOf(ends.least.personId)]
  return `${range} ${most} has the fullest hours, ${least} has the most time free: they could learn a station, or take over by a task fixed by hand.`
}

/** "3 h 05 min of work, 1 h 20 min of it at kettles and canners, 45 min at most without a pause. Break 19:30 to 20:00." */
export function sayOwnLoad({ workMinutes, heatMinutes, longestStretchMinutes, breaks }: WorkLoad): string {
  if (workMinutes === 0) return 'No work is planned but the briefing and cleaning up.'
  const heat = heatMinutes > 0 ? `, ${heatMinutes === workMinutes ? 'all' : sayWorkMinutes(heatMinutes)} of it at kettles and canners` : ''
  const rests = breaks.length > 0 ? ` ${breaks.length === 1 ? 'Break' : 'Breaks'} ${sayBreaks(breaks)}.` : ''
  return `${sayWorkMinutes(workMinutes)} of work${heat}, ${sayWorkMinutes(longestStretchMinutes)} at most without a pause.${rests}`
}

/** "19:30 to 20:00 and 22:00 to 22:30"; "none" where there is none. */
export const sayBreaks = (breaks: WorkLoad['breaks']): string =>
  breaks.length === 0 ? 'none' : breaks.map(({ start, end }) => `${formatClock(start)} to ${formatClock(end)}`).join(' and ')
