import type { Metadata } from 'next'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { requireActor } from '@/lib/auth/current-actor'
import { claimingHouseholds, dayProducts, organiserName } from '@/lib/queries/day-claims'
import { requireDayHead } from '@/lib/queries/day-head'
import { reachOf } from '@/shared/access/policy'
import { sayDate } from '@/shared/time/calendar-date'
import { DayPlace } from '../_overview/day-place'
import { areClaimsOver, ClaimSheets } from './claim-sheets'
import { ClaimTable } from './claim-table'
import { HouseholdChoice } from './household-choice'

export const metadata: Metadata = { title: 'What would you like?' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<{ household?: string | string[] }>
}

/** What a household asks for; for the organiser, all households and any of them to ask for. */
export default async function ClaimsPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-claims')
  const forAll = reachOf(actor, 'claim-jars') === 'any'
  const [day, products, households, organiser] = await Promise.all([
    requireDayHead(groupId, dayId),
    dayProducts(groupId, dayId),
    claimingHouseholds(groupId, forAll ? undefined : actor.householdId),
    organiserName(groupId),
  ])
  const wanted = (await searchParams).household
  const household = (forAll && households.find(({ id }) => id === wanted)) || households.find(({ id }) => id === actor.householdId)
  const asking = household && (
    <ClaimSheets {...{ groupId, day, products, household, organiser }} isOwn={household.id === actor.householdId} />
  )
  const isOwn = household?.id === actor.householdId
  const title =
    areClaimsOver(day) && day.state !== 'draft'
      ? `What ${isOwn ? 'you' : household?.name} asked for`
      : isOwn
        ? 'What would you like?'
        : `What would ${household?.name} like?`
  const head = (
    <PageHead
      kicker={
        <DayPlace
          {...{ groupId, dayId, name: day.name }}
          after={household && `${household.name} household, ${household.headcount} ${household.headcount === 1 ? 'person' : 'people'}`}
        />
      }
      title={title}
      lead={`${sayDate(day.date).replace(/ \d{4}$/, '')}, ${day.kitchen.name}`}
    />
  )
  if (!forAll) {
    return (
      <Page size="phone">
        {head}
        {asking}
      </Page>
    )
  }
  return (
    <Page size="desk">
      {head}
      <HouseholdChoice households={households} chosen={household?.id} />
      <div className="two">
        <div>{asking}</div>
        <ClaimTable products={products} households={households} />
      </div>
    </Page>
  )
}
