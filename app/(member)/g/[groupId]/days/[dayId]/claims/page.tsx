import type { Metadata } from 'next'
import { LookAgain } from '@/app/_shell/look-again'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { requireActor } from '@/lib/auth/current-actor'
import { claimingHouseholds, dayProducts, organiserName } from '@/lib/queries/day-claims'
import { dayForecast } from '@/lib/queries/day-forecast'
import { claimRoom } from '@/lib/queries/claim-room'
import { requireDayHead } from '@/lib/queries/day-head'
import { givenSoFar } from '@/lib/queries/given-to-day'
import { reachOf } from '@/shared/access/policy'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { sayDate } from '@/shared/time/calendar-date'
import { DayPlace } from '../_overview/day-place'
import { ClaimSheets, windowOf } from './claim-sheets'
import { ClaimTable } from './claim-table'
import { HouseholdChoice } from './household-choice'
import { AskForRule, RuleQuestion } from './rule-question'
import { WindowSheet } from './window-sheet'

export const metadata: Metadata = { title: 'What would you like?' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<{ household?: string | string[] }>
}

/** What a household asks for; for the organiser, all households and any of them to ask for. */
export default async function ClaimsPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const at = Date.now()
  const actor = await requireActor(groupId, 'see-claims')
  const forAll = reachOf(actor, 'claim-jars') === 'any'
  const [day, products, households, organiser] = await Promise.all([
    requireDayHead(groupId, dayId),
    dayProducts(groupId, dayId),
    claimingHouseholds(groupId, forAll ? undefined : actor.householdId),
    organiserName(groupId),
  ])
  const [forecast, room, given] = await Promise.all([
    dayForecast(groupId, dayId, products),
    claimRoom(groupId, dayId, day.timeZone),
    givenSoFar(groupId, dayId, dayShareRule(day.shareRule, dayId)),
  ])
  const wanted = (await searchParams).household
  const household = (forAll && households.find(({ id }) => id === wanted)) || households.find(({ id }) => id === actor.householdId)
  const isOwn = household?.id === actor.householdId
  const window = windowOf(day, room, household?.id ?? '')
  const isClaimant = household !== undefined && products.some(({ claims }) => claims.has(household.id))
  const next = `/g/${groupId}/days/${dayId}/claims${isOwn || !household ? '' : `?household=${household.id}`}`
  const asking = household && (
    <>
      {room.askedRule && isClaimant && <RuleQuestion {...{ groupId, day, next }} asked={room.askedRule} householdId={household.id} />}
      <ClaimSheets {...{ groupId, day, products, forecast, room, household, organiser, isOwn, given }} others={room.households} />
    </>
  )
  const title =
    window.kind === 'over'
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
  // Forty households may look at this page when the claims open.
  const lookAgain = <LookAgain {...{ groupId, dayId }} since={at} gapSeconds={5} />
  if (!forAll) {
    return (
      <Page size="phone">
        {head}
        {asking}
        {lookAgain}
      </Page>
    )
  }
  const claimants = households.filter(({ id }) => products.some(({ claims }) => claims.has(id)))
  const mayChangeRule = (day.state === 'claiming' || day.state === 'planned') && claimants.length > 0
  return (
    <Page size="desk">
      {head}
      <HouseholdChoice households={households} chosen={household?.id} />
      <div className="two">
        <div>{asking}</div>
        <div>
          <ClaimTable groupId={groupId} dayId={dayId} products={products} households={households} room={room} />
          <WindowSheet {...{ groupId, day, window, products, room, next }} />
          {mayChangeRule && <AskForRule {...{ groupId, day, next }} asked={room.askedRule} claimants={claimants} />}
        </div>
      </div>
      {lookAgain}
    </Page>
  )
}
