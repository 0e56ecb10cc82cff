import type { Metadata } from 'next'
import { JarGaps } from '@/app/_drawings/jar-gaps'
import { EmptyState } from '@/app/_ui/empty-state'
import { Figure } from '@/app/_ui/figure'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { groupHead } from '@/lib/queries/group-head'
import { listHouseholds } from '@/lib/queries/list-households'
import { listStock, type StockLot } from '@/lib/queries/list-stock'
import { may } from '@/shared/access/policy'
import { dateIn } from '@/shared/time/calendar-date'
import { stockTotals } from '@/shared/supplies/stock-totals'
import { AddStock } from './add-stock'
import { LotLine } from './lot-line'

export const metadata: Metadata = { title: 'Stock' }

const SECTIONS = [
  { kind: 'jar', title: 'Jars' },
  { kind: 'band', title: 'Bands' },
  { kind: 'lid', title: 'Lids' },
] as const

/** Jars, bands and lids: what there is, whose, how old, and which lids may still be used. */
export default async function StockPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-stock')
  const { timeZone } = await groupHead(groupId)
  const edits = may(actor, 'edit-stock')
  const [stock, households] = await Promise.all([listStock(actor, dateIn(timeZone, new Date())), edits ? listHouseholds(actor) : []])
  const owners = households.map(({ id, name }) => ({ value: id, label: name }))
  const left = stock.filter(({ count }) => count > 0)
  const gone = stock.filter(({ count }) => count === 0)
  return (
    <Page>
      <PageHead
        title="Jars, bands and lids"
        lead={left.length === 0 ? 'Nothing counted yet.' : undefined}
        action={
          <LinkButton kind="plain" small href={`/g/${groupId}/ledger`}>
            Jars lent and returned
          </LinkButton>
        }
      />
      <div className="stack">
        <Totals stock={left} edits={edits} />
        {SECTIONS.map(({ kind, title }) => (
          <Section
            key={kind}
            title={title}
            lots={left.filter((lot) => lot.kind === kind)}
            groupId={groupId}
            owners={edits ? owners : null}
          />
        ))}
        {edits && <AddStock groupId={groupId} owners={owners} />}
        {gone.length > 0 && <Section title="Used up" lots={gone} groupId={groupId} owners={edits ? owners : null} />}
      </div>
    </Page>
  )
}

function Totals({ stock, edits }: { stock: readonly StockLot[]; edits: boolean }) {
  const totals = stockTotals(stock.flatMap(countedLots))
  if (totals.length === 0)
    return (
      <Sheet lid={edits ? 'domed' : 'flat'}>
        <EmptyState
          drawing={<JarGaps />}
          text={edits ? 'Count what stands in the cellars: the plan says what is missing.' : 'Nobody has counted the stock yet.'}
        />
      </Sheet>
    )
  return (
    <Sheet lid="sunk" lidWords="Counted" title="Together">
      <div className="figures">
        {totals.map(({ label, count, unit, notUsable }) => (
          <div key={label}>
            <Figure label={label} value={count} unit={unit} />
            {notUsable > 0 && <p className="quiet">{notUsable} more are not usable</p>}
          </div>
        ))}
      </div>
    </Sheet>
  )
}

/** A lot as the sums take it: chipped jars are not usable, the rest of their lot is. */
function countedLots({ verdict, chipped, count, ...lot }: StockLot) {
  const isUsable = verdict?.isUsable ?? true
  return [
    { ...lot, count: count - chipped, isUsable },
    { ...lot, count: chipped, isUsable: false },
  ]
}

interface SectionProps {
  readonly title: string
  readonly lots: readonly StockLot[]
  readonly groupId: string
  /** Households to choose from; null for those who may only look. */
  readonly owners: readonly { value: string; label: string }[] | null
}

function Section({ title, lots, groupId, owners }: SectionProps) {
  if (lots.length === 0) return null
  const isUnfit = lots.some(({ verdict, count }) => count > 0 && verdict?.isUsable === false)
  return (
    <Sheet
      lid={isUnfit ? 'domed' : 'sunk'}
      lidWords={isUnfit ? 'Wants you' : 'Counted'}
      title={title}
      aside={`${lots.length} ${lots.length === 1 ? 'lot' : 'lots'}`}
    >
      <ul className="things">
        {lots.map((lot) => (
          <LotLine key={lot.id} lot={lot} groupId={groupId} owners={owners} />
        ))}
      </ul>
    </Sheet>
  )
}
