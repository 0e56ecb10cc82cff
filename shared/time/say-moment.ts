import { sayDate } from '@/shared/time/calendar-date'

/** "Tue 24 Aug, 20:00": a local moment, "2027-08-24T20:00", where the year is plain from its surroundings. */
export function sayMoment(localMoment: string): string {
  const [weekday = '', day = '', month = ''] = sayDate(localMoment).split(' ')
  return `${weekday.slice(0, 3)} ${day} ${month.slice(0, 3)}, ${localMoment.slice(11, 16)}`
}
