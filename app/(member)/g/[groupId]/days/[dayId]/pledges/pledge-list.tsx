import { CommandForm } from '@/app/_forms/command-form'
import { EmptyState } from '@/app/_ui/empty-state'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { Table } from '@/app/_ui/table'
import { freshKey } from '@/lib/http/fresh-key'
import type { DayHead } from '@/lib/queries/day-head'
import type { ListedPledge } from '@/lib/queries/day-pledges'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { formatMoney } from '@/shared/reckoning/money'
import { type PooledProduct, sayPool } from '@/shared/share/pool-products'
import { PLEDGE_WORDS } from '@/shared/wording/pledge-words'
import { sayQuantity } from '@/shared/wording/say-quantity'

const COLUMNS = [
  { key: 'household', head: 'Household' },
  { key: 'what', head: 'What' },
  { key: 'quantity', head: 'How much', numeric: true },
  { key: 'credit', head: 'Credit' },
  { key: 'act', head: 'What to do', headHidden: true },
] as const

type Props = { groupId: string; actor: Actor; day: DayHead; pledges: readonly ListedPledge[]; products: readonly PooledProduct[] }

/** Every promise in sight, with a way to take one's own back while nobody works by it. */
export function PledgeList({ groupId, actor, day, pledges, products }: Props) {
  const isOpen = day.state === 'draft' || day.state === 'claiming' || day.state === 'planned'
  const rows = pledges.map((pledge) => ({
    id: pledge.id,
    cells: {
      household: pledge.person ? `${pledge.household}, ${pledge.person}` : pledge.household,
      what: `${PLEDGE_WORDS[pledge.kind].name}: ${pledge.item}${pledge.note ? `. ${pledge.note}` : ''}`,
      quantity: sayQuantity(pledge.quantity, pledge.unit),
      credit:
        pledge.creditMinor === null
          ? ''
          : `${formatMoney(pledge.creditMinor, day.currency)} a ${pledge.unit}, ${sayPool(pledge.pool, products)}`,
      act: isOpen && may(actor, 'pledge', pledge.householdId) && (
        <CommandForm
          command="remove-pledge"
          groupId={groupId}
          formKey={freshKey()}
          next={`/g/${groupId}/days/${day.id}/pledges`}
          fixed={{ pledgeId: pledge.id }}
        >
          <SubmitButton kind="plain" small sending="Taking back">
            Take back
          </SubmitButton>
        </CommandForm>
      ),
    },
  }))
  return (
    <Sheet lid="sunk" title="Promised so far">
      {rows.length === 0 ? (
        <EmptyState text="Nothing is promised yet. Say below what your household brings or does." />
      ) : (
        <Table caption="What was promised" captionHidden columns={COLUMNS} rows={rows} />
      )}
    </Sheet>
  )
}
