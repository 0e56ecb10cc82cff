import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { EmptyState } from '@/app/_ui/empty-state'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { requireActor } from '@/lib/auth/current-actor'
import { type ReckoningPage, reckoningPage } from '@/lib/queries/reckoning'
import { FUND } from '@/shared/reckoning/labour-rule'
import { formatMoney } from '@/shared/reckoning/money'
import type { PartySum } from '@/shared/reckoning/reckon-day'
import { sayShortDate } from '@/shared/time/calendar-date'
import { sayLabourRule } from '@/shared/wording/say-money'
import { DayPlace } from '../../_overview/day-place'
import { nameOf } from '../payments'
import './sheets.css'

export const metadata: Metadata = { title: 'Reckoning sheets' }

/** One sheet of paper a household: what it took, paid and gave, and whom it pays. One's own, or everybody's for the organiser. */
export default async function ReckoningSheetsPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-reckoning')
  const page = await reckoningPage(actor, dayId)
  if (!page) notFound()
  const parties = (page.reckoning?.parties ?? []).filter(({ householdId, jars, paid, credited, balance }) => {
    return householdId !== FUND.id && (jars > 0 || paid + credited > 0 || balance !== 0)
  })
  return (
    <Page>
      <div className="screen-only">
        <PageHead
          kicker={<DayPlace groupId={groupId} dayId={dayId} name={page.dayName} />}
          title={parties.length === 1 ? 'Your reckoning sheet' : `${parties.length} reckoning sheets`}
          lead="Print this page: each household has its own sheet of paper."
        />
      </div>
      {parties.length === 0 && <EmptyState text="Nothing is reckoned yet: share the jars out first." />}
      {parties.map((party) => (
        <HouseholdSheet key={party.householdId} party={party} page={page} />
      ))}
    </Page>
  )
}

function HouseholdSheet({ party, page }: { party: PartySum; page: ReckoningPage }) {
  const money = (minor: number) => formatMoney(minor, page.currency)
  const own = page.outlays.filter(({ partyId }) => partyId === party.householdId)
  const paying = page.transfers.filter(({ fromId, toId }) => fromId === party.householdId || toId === party.householdId)
  return (
    <section className="paper reckoning-sheet">
      <h2>{party.householdName}</h2>
      <p>
        {page.dayName}, {sayShortDate(page.date)}
      </p>
      <dl>
        <dt>{party.jars} jars: its part of the cost</dt>
        <dd className="num">{money(party.share)}</dd>
        {party.surcharge > 0 && (
          <>
            <dt>Into the equipment fund</dt>
            <dd className="num">{money(party.surcharge)}</dd>
          </>
        )}
        {own.map(({ id, kind, item, pack, amount }) => (
          <Line key={`${kind} ${id}`} what={`${kind === 'paid' ? 'Paid' : 'Given'}: ${item}, ${pack}`} amount={`−${money(amount)}`} />
        ))}
        <dt>
          <b>{party.balance < 0 ? 'To pay' : 'To be paid to it'}</b>
        </dt>
        <dd className="num">
          <b>{money(Math.abs(party.balance))}</b>
        </dd>
      </dl>
      {paying.map(({ fromId, toId, amount }) => (
        <p key={`${fromId} ${toId}`}>
          {nameOf(page, fromId)} pays {nameOf(page, toId)} {money(amount)}. Paid on ______ Received on ______
        </p>
      ))}
      <p className="quiet">{sayLabourRule(page.rule, money)}</p>
    </section>
  )
}

function Line({ what, amount }: { what: string; amount: string }) {
  return (
    <>
      <dt>{what}</dt>
      <dd className="num">{amount}</dd>
    </>
  )
}
