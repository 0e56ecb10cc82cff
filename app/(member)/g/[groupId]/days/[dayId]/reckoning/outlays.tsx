import { CommandForm } from '@/app/_forms/command-form'
import { EmptyState } from '@/app/_ui/empty-state'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { Table } from '@/app/_ui/table'
import { freshKey } from '@/lib/http/fresh-key'
import type { ReckoningPage } from '@/lib/queries/reckoning'
import { sayPool } from '@/shared/share/pool-products'

interface OutlaysProps {
  readonly page: ReckoningPage
  readonly groupId: string
  readonly dayId: string
  readonly edits: boolean
  readonly money: (minor: number) => string
}

/** Receipts, and produce given for a credit. */
export function Outlays({ page: { outlays, products }, groupId, dayId, edits, money }: OutlaysProps) {
  return (
    <Sheet lid={outlays.length > 0 ? 'sunk' : 'flat'} lidWords="Receipts" title="What was paid and given">
      {outlays.length === 0 ? (
        <EmptyState text="No receipt yet." />
      ) : (
        <Table
          caption="Receipts and gifts"
          captionHidden
          columns={[
            { key: 'item', head: 'What' },
            { key: 'pack', head: 'How much' },
            { key: 'who', head: 'By' },
            { key: 'pool', head: 'Pool' },
            { key: 'amount', head: 'Amount', numeric: true },
            { key: 'out', head: 'Take out', headHidden: true },
          ]}
          rows={outlays.map(({ id, kind, item, pack, householdName, poolId, amount }) => ({
            id,
            cells: {
              item: kind === 'credited' ? `${item} (given)` : item,
              pack,
              who: householdName,
              pool: sayPool(poolId, products),
              amount: money(amount),
              out: edits && kind === 'paid' && (
                <CommandForm
                  command="remove-purchase"
                  groupId={groupId}
                  formKey={freshKey()}
                  next={`/g/${groupId}/days/${dayId}/reckoning`}
                  fixed={{ dayId, purchaseId: id }}
                >
                  <SubmitButton small kind="plain" sending="Taking out">
                    Take out<span className="unseen"> {item}</span>
                  </SubmitButton>
                </CommandForm>
              ),
            },
          }))}
        />
      )}
    </Sheet>
  )
}
