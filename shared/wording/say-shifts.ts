import type { DayProblem } from '@/shared/planning/day-problem'
import type { ShorterShift } from '@/shared/planning/shorter-shifts'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'

/** Who goes earlier and who comes later: "Eko and Gia go at 12:30, Fay comes at 13:00". */
export function sayShorterShifts({ people }: DayProblem, shifts: readonly ShorterShift[]): string {
  const offered = new Map(people.map((person) => [person.id, person]))
  const goes = shifts.filter(({ personId, until }) => until !== offered.get(personId)?.until)
  const comes = shifts.filter(({ personId, from }) => from !== offered.get(personId)?.from)
  const name = ({ personId }: ShorterShift) => offered.get(personId)?.name ?? personId
  const say = (list: readonly ShorterShift[], at: (shift: ShorterShift) => KitchenTime, one: string, many: string) =>
    [...new Set(list.map(at))]
      .sort((a, b) => a - b)
      .map((time) => {
        const names = list.filter((shift) => at(shift) === time).map(name)
        const listed = names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
        return `${listed} ${names.length === 1 ? one : many} at ${formatClock(time)}`
      })
  return [...say(goes, ({ until }) => until, 'goes', 'go'), ...say(comes, ({ from }) => from, 'comes', 'come')].join(', ')
}
