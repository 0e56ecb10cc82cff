import 'server-only'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { database } from '@/lib/db/client'
import { localMomentOf } from '@/lib/time/local-moment'
import type { DayState } from '@/shared/lifecycle/day-states'
import { isoDate } from '@/shared/time/calendar-date'

/** What every page of a day says of it. */
export type DayHead = NonNullable<Awaited<ReturnType<typeof readDayHead>>>

/** The day's own facts with its kitchen's and its group's; null when the group has no such day. A fixed number of statements. */
export async function readDayHead(groupId: string, dayId: string) {
  const row = await database().day.findUnique({
    where: { groupId_id: { groupId, id: dayId } },
    select: {
      id: true,
      kitchenId: true,
      name: true,
      date: true,
      state: true,
      version: true,
      accessAt: true,
      peopleArriveAt: true,
      briefingMinutes: true,
      firstLoadAt: true,
      cannersEmptyBy: true,
      cleanUpMinutes: true,
      breakMinutes: true,
      breakAfterMinutes: true,
      longestStretchMinutes: true,
      tableWashMinutes: true,
      hardEnd: true,
      shareRule: true,
      sparePercent: true,
      claimsOpenAt: true,
      claimsCloseAt: true,
      earlyMinutes: true,
      householdCap: true,
      kitchen: { select: { name: true, elevationFeet: true } },
      group: { select: { timeZone: true, isDemo: true, currency: true } },
    },
  })
  if (!row) return null
  const { date, state, claimsOpenAt, claimsCloseAt, group, ...day } = row
  return {
    ...day,
    ...group,
    date: isoDate(date),
    state: state as DayState,
    claimsOpenAt,
    claimsCloseAt,
    /** In the group's zone, "2027-08-24T20:00". */
    claimsCloseLocal: claimsCloseAt && localMomentOf(claimsCloseAt, group.timeZone),
    claimsOpenLocal: claimsOpenAt && localMomentOf(claimsOpenAt, group.timeZone),
  }
}

/** For pages: the day, or "not found". Asked once a request. */
export const requireDayHead = cache(async (groupId: string, dayId: string): Promise<DayHead> => {
  return (await readDayHead(groupId, dayId)) ?? notFound()
})
