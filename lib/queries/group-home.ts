import 'server-only'
import { database } from '@/lib/db/client'
import type { Actor } from '@/shared/access/actor'
import type { GroupFacts } from '@/shared/group/what-wants-you'
import { judgeCanner } from '@/shared/kitchen/judge-canner'
import { dateIn, isoDate } from '@/shared/time/calendar-date'

/** One day as the group's first page shows it. */
export interface HomeDay {
  readonly id: string
  readonly name: string
  readonly date: string
  readonly state: string
  readonly kitchen: string
  readonly peopleArriveAt: number
  readonly hardEnd: number
  /** Jars on offer and asked for, by everybody and by the actor's household. */
  readonly offered: number
  readonly asked: number
  readonly askedByUs: number
}

export interface GroupHome {
  readonly facts: GroupFacts
  readonly people: number
  readonly days: readonly HomeDay[]
}

const MOST_DAYS = 12

/** What the group's first page shows: its newest days and what there is. A fixed number of statements, however many rows. */
export async function groupHome({ groupId, householdId }: Actor, timeZone: string, now: Date): Promise<GroupHome> {
  const [households, people, kitchens, supplies, dayRows, canners] = await Promise.all([
    database().household.count({ where: { groupId } }),
    database().person.count({ where: { groupId, active: true } }),
    database().kitchen.count({ where: { groupId } }),
    database().supplyLot.count({ where: { groupId, count: { gt: 0 } } }),
    newestDays(groupId, householdId),
    database().canner.findMany({ where: { groupId, outOfUse: null, gauge: 'dial' }, select: DIAL }),
  ])
  const today = dateIn(timeZone, now)
  const unfitCanners = canners.flatMap(({ kitchenId, label, gaugeTestedOn, ...canner }) => {
    const verdict = judgeCanner({ ...canner, gaugeTestedOn: gaugeTestedOn && isoDate(gaugeTestedOn) }, today)
    return verdict.isUsable ? [] : [{ kitchenId, label, whyNot: verdict.whyNot }]
  })
  const days = dayRows.map((day) => ({ id: day.id, name: day.name, state: day.state, jarsAsked: day.askedByUs, hasOffer: day.offered > 0 }))
  return { facts: { households, kitchens, supplies, days, unfitCanners }, people, days: dayRows }
}

const DIAL = { kitchenId: true, label: true, method: true, gauge: true, gaugeTestedOn: true, gaugeErrorPsi: true, outOfUse: true } as const

async function newestDays(groupId: string, householdId: string): Promise<HomeDay[]> {
  const rows = await database().day.findMany({
    where: { groupId },
    select: {
      id: true,
      name: true,
      date: true,
      state: true,
      peopleArriveAt: true,
      hardEnd: true,
      kitchen: { select: { name: true } },
      preparations: { select: { offered: true, claimed: true, claims: { where: { householdId }, select: { jars: true } } } },
    },
    orderBy: [{ date: 'desc' }, { id: 'asc' }],
    take: MOST_DAYS,
  })
  return rows.map(({ preparations, kitchen, date, ...day }) => ({
    ...day,
    date: isoDate(date),
    kitchen: kitchen.name,
    offered: sum(preparations.map(({ offered }) => offered)),
    asked: sum(preparations.map(({ claimed }) => claimed)),
    askedByUs: sum(preparations.flatMap(({ claims }) => claims.map(({ jars }) => jars))),
  }))
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0)
