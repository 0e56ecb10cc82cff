import 'server-only'
import { database } from '@/lib/db/client'
import { OWN_RECIPE, recipeOf } from '@/lib/stores/recipes'
import { localMomentOf } from '@/lib/time/local-moment'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { DayState } from '@/shared/lifecycle/day-states'
import { isoDate } from '@/shared/time/calendar-date'

/** One product as the board shows it: sums alone, no household. */
export interface BoardOffer {
  readonly id: string
  readonly letter: string
  readonly title: string
  readonly jarSize: JarSize
  readonly offered: number
  readonly asked: number
  readonly waiting: number
  /** The most for one household; null without a cap. */
  readonly cap: number | null
  readonly yours: number
}

/** One day with its offers. Moments are on the kitchen's clock, "2027-08-24T20:00". */
export interface BoardDay {
  readonly id: string
  readonly name: string
  readonly date: string
  readonly state: DayState
  readonly kitchen: string
  readonly opens: string | null
  readonly closes: string | null
  readonly isOver: boolean
  readonly offers: readonly BoardOffer[]
}

const ON_THE_BOARD: readonly DayState[] = ['claiming', 'planned']
const MOST_DAYS = 12

/** All offers of the group's days that take claims or wait for their work, the next day first. A fixed number of statements. */
export async function offersBoard(groupId: string, householdId: string, timeZone: string, now: Date): Promise<BoardDay[]> {
  const days = await database().day.findMany({
    where: { groupId, state: { in: [...ON_THE_BOARD] } },
    orderBy: [{ date: 'asc' }, { id: 'asc' }],
    take: MOST_DAYS,
    select: {
      ...{ id: true, name: true, date: true, state: true, claimsOpenAt: true, claimsCloseAt: true },
      kitchen: { select: { name: true } },
      preparations: {
        orderBy: { letter: 'asc' },
        select: {
          ...{ id: true, letter: true, recipeId: true, jarSize: true, offered: true, claimed: true, waiting: true, householdCap: true },
          ownRecipe: OWN_RECIPE,
          claims: { where: { householdId }, select: { jars: true } },
        },
      },
    },
  })
  const local = (moment: Date | null) => moment && localMomentOf(moment, timeZone)
  return days.map(({ kitchen, preparations, date, state, claimsOpenAt, claimsCloseAt, ...day }) => ({
    ...day,
    date: isoDate(date),
    state: state as DayState,
    kitchen: kitchen.name,
    opens: claimsOpenAt && claimsOpenAt > now ? local(claimsOpenAt) : null,
    closes: local(claimsCloseAt),
    isOver: state !== 'claiming' || (claimsCloseAt !== null && now > claimsCloseAt),
    offers: preparations.map(({ recipeId, ownRecipe, claimed, jarSize, householdCap, claims, ...offer }) => ({
      ...offer,
      title: recipeOf({ recipeId, ownRecipe }).title,
      jarSize: jarSize as JarSize,
      asked: claimed,
      cap: householdCap,
      yours: claims[0]?.jars ?? 0,
    })),
  }))
}
