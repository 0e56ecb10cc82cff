import type { Metadata } from 'next'
import { LookAgain } from '@/app/_shell/look-again'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { groupHead } from '@/lib/queries/group-head'
import { type BoardDay, type BoardOffer, offersBoard } from '@/lib/queries/offers-board'
import { productName, productNoun } from '@/shared/day/product-name'
import { jarName, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { sayDate } from '@/shared/time/calendar-date'
import { sayMoment } from '@/shared/time/say-moment'

export const metadata: Metadata = { title: 'Offers' }

/** The board: what every open day offers, what is asked for and what is waited for. Sums alone, so that it may hang on a wall. */
export default async function OffersPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const at = Date.now()
  const actor = await requireActor(groupId, 'see-claims')
  const { timeZone } = await groupHead(groupId)
  const days = await offersBoard(groupId, actor.householdId, timeZone, new Date(at))
  const [next] = days
  return (
    <Page>
      <PageHead title="Offers" lead={days.length === 0 ? undefined : 'What the next days put up, and what is still free.'} />
      {days.length === 0 && <EmptyState text="No day takes claims now. As soon as one does, its jars stand here." />}
      <div className="stack">
        {days.map((day) => (
          <DayOffers key={day.id} groupId={groupId} day={day} />
        ))}
      </div>
      {next && <LookAgain groupId={groupId} dayId={next.id} since={at} gapSeconds={5} everySeconds={days.length > 1 ? 60 : undefined} />}
    </Page>
  )
}

const COLUMNS = [
  { key: 'product', head: 'Product' },
  { key: 'offered', head: 'Offered', numeric: true },
  { key: 'asked', head: 'Asked for', numeric: true },
  { key: 'free', head: 'Free', numeric: true },
  { key: 'waiting', head: 'Waited for', numeric: true },
] as const

function DayOffers({ groupId, day }: { groupId: string; day: BoardDay }) {
  const wants = !day.isOver && day.opens === null && day.offers.some(({ offered, asked }) => asked < offered)
  return (
    <Sheet
      lid={wants ? 'domed' : day.isOver ? 'sunk' : 'flat'}
      lidWords={wants ? 'Jars are free' : day.isOver ? 'Claims are closed' : 'All asked for, or not open yet'}
      title={day.name}
      aside={sayDate(day.date)}
    >
      <p>
        {day.kitchen}. {sayWhen(day)}
      </p>
      <Table caption={`Offers of ${day.name}, in jars`} captionHidden columns={COLUMNS} rows={day.offers.map(rowOf)} />
      <p className="screen-only">{sayYours(day.offers)}</p>
      {!day.isOver && (
        <LinkButton href={`/g/${groupId}/days/${day.id}/claims`}>{wants ? 'Ask for jars' : 'Look at your claims'}</LinkButton>
      )}
    </Sheet>
  )
}

/** For whoever looks, not for the wall. */
function sayYours(offers: readonly BoardOffer[]): string {
  const asked = offers.filter(({ yours }) => yours > 0)
  if (asked.length === 0) return 'Your household asks for none yet.'
  const said = asked.map(({ yours, jarSize, title }) => `${yours} ${jarName(jarSize, yours)} of ${productNoun(title)}`)
  return `Your household asks for ${said.join(', ')}.`
}

function sayWhen({ opens, closes, isOver }: BoardDay): string {
  if (isOver) return 'The time for asking is over.'
  const until = closes ? `until ${sayMoment(closes)}` : 'until the organiser closes the claims'
  return opens ? `Ask from ${sayMoment(opens)}, ${until}.` : `Ask ${until}.`
}

function rowOf({ id, letter, title, jarSize, offered, asked, waiting, cap }: BoardOffer) {
  const most = cap === null ? '' : `, at most ${cap} ${jarName(jarSize, cap)} each`
  const product = `${letter}: ${productName(title)}, ${jarNameWithVolume(jarSize)}${most}`
  return { id, cells: { product, offered, asked, free: offered - asked, waiting } }
}
