import { notFound } from 'next/navigation'
import { CommandForm } from '@/app/_forms/command-form'
import { Facts } from '@/app/_ui/facts'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { groupHead } from '@/lib/queries/group-head'
import { type KitchenFacts, kitchenPage } from '@/lib/queries/kitchen-page'
import { may } from '@/shared/access/policy'
import { sayElevation } from '@/shared/kitchen/say-elevation'
import { dateIn } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { KitchenEntries } from '../kitchen-entries'
import { Burners } from './burners'
import { Canners } from './canners'
import { Kettles } from './kettles'
import type { Place } from './place'

/** One kitchen and everything that stands in it. */
export default async function KitchenPage({ params }: { params: Promise<{ groupId: string; kitchenId: string }> }) {
  const { groupId, kitchenId } = await params
  const actor = await requireActor(groupId, 'see-kitchen')
  const { timeZone } = await groupHead(groupId)
  const found = await kitchenPage(actor, kitchenId, dateIn(timeZone, new Date()))
  if (!found) notFound()
  const { kitchen, burners, kettles, canners } = found
  const place = { groupId, kitchenId, edits: may(actor, 'edit-kitchen') }
  return (
    <Page>
      <PageHead
        kicker="Kitchen"
        title={kitchen.name}
        lead={`${sayElevation(kitchen.elevationFeet)}. Known from: ${kitchen.elevationSource}.`}
        action={
          <LinkButton kind="plain" small href={`/g/${groupId}/kitchens/${kitchenId}/instruments`}>
            Check instruments
          </LinkButton>
        }
      />
      <div className="two">
        <div className="stack">
          <Canners place={place} canners={canners} />
          <Kettles place={place} kettles={kettles} />
        </div>
        <div className="stack">
          <Burners place={place} burners={burners} />
          <Room place={place} kitchen={kitchen} />
        </div>
      </div>
    </Page>
  )
}

function Room({ place: { groupId, kitchenId, edits }, kitchen }: { place: Place; kitchen: KitchenFacts }) {
  return (
    <Sheet lid="sunk" lidWords="Known" title="The room">
      <Facts
        facts={[
          { label: 'Elevation', value: sayElevation(kitchen.elevationFeet) },
          { label: 'Known from', value: kitchen.elevationSource },
          { label: 'Open', value: `${formatClock(kitchen.opensAt)} to ${formatClock(kitchen.closesAt)}` },
          { label: 'People at most', value: `${kitchen.headcountLimit} people` },
          { label: 'Jars that can cool', value: `${kitchen.rackJars} jars` },
          { label: 'Tables to fill at', value: counted(kitchen.fillTables, 'table') },
          { label: 'Fridges', value: counted(kitchen.fridges, 'fridge') },
          { label: 'Sinks', value: counted(kitchen.sinks, 'sink') },
          ...(kitchen.notes ? [{ label: 'Notes', value: kitchen.notes }] : []),
        ]}
      />
      {edits && (
        <Fold summary="Change the room">
          <CommandForm
            command="edit-kitchen"
            groupId={groupId}
            formKey={freshKey()}
            next={`/g/${groupId}/kitchens/${kitchenId}`}
            fixed={{ kitchenId, seen: kitchen.seen }}
            className="form"
          >
            <KitchenEntries first={kitchen} />
            <SubmitButton sending="Saving">Save the room</SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}

const counted = (number: number, one: string) => `${number} ${one}${number === 1 ? '' : 's'}`
