import type { Metadata } from 'next'
import { LookAgain } from '@/app/_shell/look-again'
import { requireActor } from '@/lib/auth/current-actor'
import { dayProducts } from '@/lib/queries/day-claims'
import { dayForecast } from '@/lib/queries/day-forecast'
import { requireDayHead } from '@/lib/queries/day-head'
import { dayOutlook } from '@/lib/queries/day-outlook'
import { groupStock } from '@/lib/queries/day-stock'
import { kitchenChoices } from '@/lib/queries/kitchen-choices'
import { may } from '@/shared/access/policy'
import { OrganiserDay } from './_overview/organiser-day'
import { PlainDay } from './_overview/plain-day'

export const metadata: Metadata = { title: 'Canning day' }

type Props = { params: Promise<{ groupId: string; dayId: string }> }

/** One canning day: for the organiser whether it fits and what is nearly full, for everybody else what it is and what wants them. */
export default async function DayPage({ params }: Props) {
  const { groupId, dayId } = await params
  const at = Date.now()
  const actor = await requireActor(groupId, 'see-day')
  const [day, products] = await Promise.all([requireDayHead(groupId, dayId), dayProducts(groupId, dayId)])
  const lookAgain = <LookAgain {...{ groupId, dayId }} since={at} gapSeconds={5} />
  if (!may(actor, 'edit-day')) {
    return (
      <>
        <PlainDay {...{ actor, day, products }} forecast={await dayForecast(groupId, dayId, products)} />
        {lookAgain}
      </>
    )
  }

  const offers = new Map(products.map(({ id, offered }) => [id, offered]))
  const [outlook, forecast, stock, kitchens] = await Promise.all([
    dayOutlook(groupId, dayId, day.state, offers),
    dayForecast(groupId, dayId, products),
    groupStock(groupId),
    kitchenChoices(groupId),
  ])
  return (
    <>
      <OrganiserDay {...{ actor, day, products, outlook, forecast, stock, kitchens }} />
      {lookAgain}
    </>
  )
}
