import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { shoppingPage } from '@/lib/queries/shopping'
import { may } from '@/shared/access/policy'
import { formatMoney } from '@/shared/reckoning/money'
import type { ShoppingItem, ShoppingPage } from '@/shared/supplies/day-list'
import { DayPlace } from '../_overview/day-place'
import { KeepTicks } from './keep-ticks'
import { LeftOvers } from './left-overs'
import { ListLine } from './list-line'
import './shopping.css'

export const metadata: Metadata = { title: 'Shopping list' }

const OPEN = ['draft', 'claiming', 'planned', 'running', 'resting']

/** What is still to buy, by whom and in which packs. After one visit it opens and ticks without a network. */
export default async function ShoppingPageOfDay({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-shopping')
  const page = await shoppingPage(actor, dayId)
  if (!page) notFound()
  const address = { groupId, dayId, page, actor, isOpen: OPEN.includes(page.day.state) }
  const missing = page.items.filter((item) => item.missing > 0)
  const done = page.items.filter((item) => item.missing === 0 && item.bought.length > 0)
  const there = page.items.filter((item) => item.missing === 0 && item.bought.length === 0)
  return (
    <KeepTicks groupId={groupId} dayId={dayId} userId={actor.userId} writtenAt={Date.now()}>
      <Page size="phone">
        <PageHead
          kicker={<DayPlace groupId={groupId} dayId={dayId} name={page.day.name} />}
          title={headline(missing)}
          lead={lead(page)}
          action={
            <LinkButton kind="plain" small href={`/g/${groupId}/days/${dayId}/shopping/list.csv`}>
              As a file (CSV)
            </LinkButton>
          }
        />
        <div className="stack shopping">
          {page.items.length === 0 && (
            <Sheet lid="domed">
              <EmptyState text="Nothing to buy yet: nobody has asked for jars. Choose recipes and open the claims." />
            </Sheet>
          )}
          {runsOf(missing).map(([run, items]) => (
            <Sheet key={run} lid="domed" lidWords="To buy" title={run} aside={`${items.length} ${items.length === 1 ? 'thing' : 'things'}`}>
              <ul className="things">
                {items.map((item) => (
                  <ListLine key={item.key} item={item} {...address} />
                ))}
              </ul>
            </Sheet>
          ))}
          {done.length > 0 && (
            <Sheet lid="sunk" lidWords="Bought" title="Bought">
              <ul className="things">
                {done.map((item) => (
                  <ListLine key={item.key} item={item} {...address} />
                ))}
              </ul>
            </Sheet>
          )}
          {there.length > 0 && (
            <Sheet lid="sunk" lidWords="There already" title="There already">
              <ul className="things">
                {there.map((item) => (
                  <ListLine key={item.key} item={item} {...address} />
                ))}
              </ul>
            </Sheet>
          )}
          <Notes page={page} />
          <LeftOvers page={page} groupId={groupId} dayId={dayId} edits={may(actor, 'edit-shopping')} />
        </div>
      </Page>
    </KeepTicks>
  )
}

function headline(missing: readonly ShoppingItem[]): string {
  if (missing.length === 0) return 'Nothing left to buy'
  return `${missing.length} ${missing.length === 1 ? 'thing' : 'things'} to buy`
}

function lead({ price, spent, day, isPlanned, items }: ShoppingPage): string | undefined {
  if (items.length === 0) return undefined
  const from = isPlanned ? 'By the batches of the plan.' : 'By the claims so far, in whole batches; the plan may change it.'
  const money = (minor: number) => formatMoney(minor, day.currency)
  const open = price === null ? 'Some prices are not known yet.' : price > 0 ? `About ${money(price)} still to pay.` : ''
  const paid = spent > 0 ? `${money(spent)} paid.` : ''
  return [from, open, paid].filter(Boolean).join(' ')
}

/** By run and buyer, what nobody buys yet last. */
function runsOf(items: readonly ShoppingItem[]): [string, ShoppingItem[]][] {
  const groups = new Map<string, ShoppingItem[]>()
  const inOrder = [...items].sort((a, b) => Number(a.buyer === null) - Number(b.buyer === null))
  for (const item of inOrder) {
    const name = item.buyer ? [item.buyer.name, item.run].filter(Boolean).join(', ') : item.run || 'Nobody buys this yet'
    groups.set(name, [...(groups.get(name) ?? []), item])
  }
  return [...groups]
}

/** What the recipes say beside their lists. */
function Notes({ page: { notes } }: { page: ShoppingPage }) {
  const shown = notes.filter((each) => each.notes.length > 0 || each.isKeyOnly)
  if (shown.length === 0) return null
  return (
    <Sheet lid="flat" lidWords="To read" title="The recipes also say">
      <ul className="list">
        {shown.map(({ title, notes: said, isKeyOnly }) => (
          <li key={title}>
            <b>{title}:</b> {said.join(' ')}
            {isKeyOnly && ' Its list was read in part: read the whole recipe before you buy.'}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
