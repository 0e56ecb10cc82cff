import type { Metadata } from 'next'
import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { EmptyState } from '@/app/_ui/empty-state'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { type ListedKitchen, listKitchens } from '@/lib/queries/list-kitchens'
import { may } from '@/shared/access/policy'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { formatClock } from '@/shared/time/kitchen-time'
import { KitchenEntries } from './kitchen-entries'

export const metadata: Metadata = { title: 'Kitchens' }

/** The kitchens that the group uses. */
export default async function KitchensPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-kitchen')
  const kitchens = await listKitchens(actor)
  const edits = may(actor, 'edit-kitchen')
  return (
    <Page>
      <PageHead title={kitchens.length === 0 ? 'No kitchen yet' : `${kitchens.length} ${kitchens.length === 1 ? 'kitchen' : 'kitchens'}`} />
      <div className="stack">
        <Sheet lid={kitchens.length === 0 ? 'domed' : 'sunk'} lidWords={kitchens.length === 0 ? 'Wants you' : 'Known'}>
          {kitchens.length === 0 ? (
            <EmptyState
              drawing={<TradeSymbol name="canner" height={64} />}
              text={
                edits ? 'Enter the kitchen first: its elevation decides every process time.' : 'The organiser has entered no kitchen yet.'
              }
            />
          ) : (
            <ul className="things">
              {kitchens.map((kitchen) => (
                <KitchenLine key={kitchen.id} groupId={groupId} kitchen={kitchen} />
              ))}
            </ul>
          )}
        </Sheet>
        {edits && (
          <Sheet lid={kitchens.length === 0 ? 'domed' : 'flat'} lidWords="If there is another one" title="Add a kitchen">
            <CommandForm
              command="add-kitchen"
              groupId={groupId}
              formKey={freshKey()}
              next={`/g/${groupId}/kitchens/{kitchenId}`}
              className="form side"
            >
              <KitchenEntries />
              <div className="full">
                <SubmitButton sending="Adding it">Add the kitchen</SubmitButton>
              </div>
            </CommandForm>
          </Sheet>
        )}
      </div>
    </Page>
  )
}

function KitchenLine({ groupId, kitchen }: { groupId: string; kitchen: ListedKitchen }) {
  const { id, name, elevationFeet, opensAt, closesAt, headcountLimit, burners, kettles, canners } = kitchen
  return (
    <li>
      <Link className="way" href={`/g/${groupId}/kitchens/${id}`} prefetch={false}>
        <span className="slab">{name}</span>
      </Link>
      <p>
        {sayElevation(elevationFeet)}, {formatClock(opensAt)} to {formatClock(closesAt)}, {headcountLimit} people at most
      </p>
      <p className="quiet">
        In use: {counted(burners, 'burner')}, {counted(kettles, 'kettle')}, {counted(canners, 'canner')}
      </p>
    </li>
  )
}

const counted = (number: number, one: string) => `${number} ${one}${number === 1 ? '' : 's'}`
