import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { type ReckoningPage, reckoningPage } from '@/lib/queries/reckoning'
import { may } from '@/shared/access/policy'
import { productName } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { formatMoney } from '@/shared/reckoning/money'
import { COMMON_POOL, sayPool } from '@/shared/share/pool-products'
import { sayReckonProblem } from '@/shared/wording/say-reckoning'
import { DayPlace } from '../_overview/day-place'
import { AddReceipt } from './add-receipt'
import { Equipment } from './equipment'
import { Hours } from './hours'
import { Outlays } from './outlays'
import { Payments } from './payments'

export const metadata: Metadata = { title: 'Costs' }

const OPEN = ['draft', 'claiming', 'planned', 'running', 'resting']

/** What was paid and given, what a jar cost, and who owes whom: every cent lands on somebody. */
export default async function ReckoningPageOfDay({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-reckoning')
  const page = await reckoningPage(actor, dayId)
  if (!page) notFound()
  const edits = OPEN.includes(page.dayState) && may(actor, 'edit-reckoning')
  const money = (minor: number) => formatMoney(minor, page.currency)
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={page.dayName} />}
        title={headline(page)}
        action={
          <span className="row screen-only">
            <LinkButton kind="plain" small href={`/g/${groupId}/days/${dayId}/reckoning/sheets`}>
              Sheets to print
            </LinkButton>
            <LinkButton kind="plain" small href={`/g/${groupId}/days/${dayId}/reckoning/reckoning.csv`}>
              As a file (CSV)
            </LinkButton>
          </span>
        }
        lead={page.isWhole ? undefined : 'You see your own household: its receipts, its part, its payments.'}
      />
      <div className="two wide-first">
        <div className="stack">
          {page.reckoning ? (
            <Settled page={page} money={money} />
          ) : (
            page.problem && <p>{sayReckonProblem(page.problem, page.currency, page.products)}</p>
          )}
          <Payments page={page} groupId={groupId} dayId={dayId} actor={actor} money={money} />
          <Outlays page={page} groupId={groupId} dayId={dayId} edits={edits} money={money} />
        </div>
        <div className="stack">
          {page.reckoning && page.isWhole && <Pools page={page} money={money} />}
          <Hours {...{ page, groupId, dayId, money, edits }} isRuleOpen={['draft', 'claiming', 'planned'].includes(page.dayState)} />
          {edits && <Equipment page={page} groupId={groupId} dayId={dayId} money={money} />}
          {edits && <AddReceipt page={page} groupId={groupId} dayId={dayId} />}
        </div>
      </div>
    </Page>
  )
}

function headline({ reckoning, transfers }: ReckoningPage): string {
  if (!reckoning) return 'Not reckoned yet'
  if (transfers.length === 0) return 'Nobody owes anybody'
  return `${transfers.length} ${transfers.length === 1 ? 'payment settles' : 'payments settle'} it`
}

type Money = (minor: number) => string

/** What each household carries and gets back, and the payments. */
function Settled({ page, money }: { page: ReckoningPage; money: Money }) {
  const signed = (minor: number) => (minor === 0 ? 'even' : minor > 0 ? `gets ${money(minor)}` : `pays ${money(-minor)}`)
  return (
    <Sheet lid={page.transfers.length === 0 ? 'sunk' : 'domed'} lidWords="Reckoned" title="Who carries what">
      <Table
        caption="Shares, payments and balances"
        captionHidden
        columns={[
          { key: 'name', head: 'Household' },
          { key: 'jars', head: 'Jars', numeric: true },
          { key: 'share', head: 'Its part', numeric: true },
          { key: 'paid', head: 'Paid', numeric: true },
          { key: 'given', head: 'Given in kind', numeric: true },
          ...(page.rule.kind === 'surcharge' ? [{ key: 'surcharge' as const, head: 'Into the fund', numeric: true }] : []),
          { key: 'balance', head: 'So it', numeric: true },
        ]}
        rows={(page.reckoning?.parties ?? []).map((party) => ({
          id: party.householdId,
          cells: {
            name: party.householdName,
            jars: party.jars,
            share: money(party.share),
            paid: money(party.paid),
            given: money(party.credited),
            surcharge: money(party.surcharge),
            balance: signed(party.balance),
          },
        }))}
      />
    </Sheet>
  )
}

/** What each pool came to and what one jar cost. */
function Pools({ page, money }: { page: ReckoningPage; money: Money }) {
  const title = (id: string) => productName(page.products.find((product) => product.id === id)?.title ?? id)
  return (
    <Sheet lid="sunk" lidWords="Added up" title="Pools and jars">
      <ul className="list">
        {page.reckoning?.pools.map(({ poolId, paid, credited, total, isByAsked }) => (
          <li key={poolId}>
            <span className="row apart">
              <b>
                {poolId === COMMON_POOL
                  ? 'Common: every jar'
                  : `${sayPool(poolId, page.products)}: ${page.pools
                      .find(({ id }) => id === poolId)
                      ?.productIds.map(title)
                      .join(', ')}`}
              </b>
              <span className="num">{money(total)}</span>
            </span>
            <span className="quiet">
              {money(paid)} paid{credited > 0 && `, ${money(credited)} given in kind`}
              {isByAsked && '. No jar came of it: whoever asked for some carries it, by what was asked for'}
            </span>
          </li>
        ))}
        {page.reckoning?.jarCosts.map(({ product, cost }) => (
          <li key={product} className="row apart">
            <span>
              One {jarName(page.sizes[product] ?? 'pint')} of {title(product).toLowerCase()}
            </span>
            <span className="num">{money(cost)}</span>
          </li>
        ))}
      </ul>
      <p className="src">
        {page.rule.kind === 'credit' ? 'Hours are in it as they are credited.' : 'Labour is not in it.'} Shares are reckoned exactly; what
        is left over in cents goes to the largest fractions, ties by household name.
      </p>
    </Sheet>
  )
}
