import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Facts } from '@/app/_ui/facts'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { GroupHead } from '@/lib/queries/group-head'
import type { GroupHome } from '@/lib/queries/group-home'
import type { Actor } from '@/shared/access/actor'
import { type Act, may, reachOf } from '@/shared/access/policy'
import { CURRENCIES } from '@/shared/forms/group'
import { TIME_ZONES } from '@/shared/time/time-zones'

interface GroupFactsProps {
  readonly actor: Actor
  readonly head: GroupHead
  readonly home: GroupHome
}

/** What there is in the group, as far as this person sees it, and how anybody who holds a jar reaches it. */
export function GroupFacts({ actor, head, home }: GroupFactsProps) {
  return (
    <Sheet lid="sunk" lidWords="Known" title="The group">
      <Facts
        facts={[
          ...countedFacts(actor, home),
          { label: 'Lot numbers begin with', value: <span className="num">{head.code}</span> },
          { label: 'Kitchen clock', value: head.timeZone.replaceAll('_', ' ') },
          { label: 'Who holds a jar asks', value: head.askLine },
        ]}
      />
      {may(actor, 'edit-group') && <EditGroup groupId={actor.groupId} head={head} />}
    </Sheet>
  )
}

/** Counts of what this person may see all of; of what they see only their own part, that part. */
function countedFacts(actor: Actor, { facts, people }: GroupHome) {
  const lines: readonly { act: Act; label: string; path: string; words: string }[] = [
    { act: 'see-households', label: 'Households', path: '/households', words: count(facts.households, 'household') },
    { act: 'see-people', label: 'People', path: '/people', words: `${people} ${people === 1 ? 'person' : 'people'}` },
    { act: 'see-kitchen', label: 'Kitchens', path: '/kitchens', words: count(facts.kitchens, 'kitchen') },
    { act: 'see-stock', label: 'Stock', path: '/stock', words: count(facts.supplies, 'lot') },
  ]
  return lines
    .filter(({ act }) => may(actor, act))
    .map(({ act, label, path, words }) => ({
      label,
      value: (
        <Link className="tall" href={`/g/${actor.groupId}${path}`} prefetch={false}>
          {reachOf(actor, act) === 'any' ? words : 'Your own'}
        </Link>
      ),
    }))
}

function EditGroup({ groupId, head }: { groupId: string; head: GroupHead }) {
  return (
    <Fold summary="Change the group">
      <CommandForm
        command="edit-group"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}`}
        fixed={{ seen: head.seen }}
        className="form"
      >
        <FieldEntry name="name" label="Name of the group" first={head.name} required maxLength={60} />
        <SelectEntry name="timeZone" label="Time zone of the kitchen" first={head.timeZone} required options={TIME_ZONES} />
        <SelectEntry
          name="currency"
          label="Money is counted in"
          first={head.currency}
          options={CURRENCIES.map((value) => ({ value, label: value }))}
        />
        <FieldEntry name="askLine" label="Whom does somebody ask who holds a jar?" first={head.askLine} required maxLength={160} />
        <SubmitButton kind="plain" sending="Saving">
          Save the group
        </SubmitButton>
      </CommandForm>
    </Fold>
  )
}

const count = (number: number, one: string) => `${number} ${one}${number === 1 ? '' : 's'}`
