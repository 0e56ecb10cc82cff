import type { ReactNode } from 'react'
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
import { type Act, may } from '@/shared/access/policy'
import { CURRENCIES } from '@/shared/forms/group'
import { TIME_ZONES } from '@/shared/time/time-zones'

interface GroupFactsProps {
  readonly actor: Actor
  readonly head: GroupHead
  readonly home: GroupHome
}

/** What there is in the group, and how anybody who holds a jar reaches it. */
export function GroupFacts({ actor, head, home: { facts, people } }: GroupFactsProps) {
  const way = (act: Act, path: string, words: string): ReactNode =>
    may(actor, act) ? (
      <Link href={`/g/${actor.groupId}${path}`} prefetch={false}>
        {words}
      </Link>
    ) : (
      words
    )
  return (
    <Sheet lid="sunk" lidWords="Known" title="The group">
      <Facts
        facts={[
          { label: 'Households', value: way('see-households', '/households', count(facts.households, 'household')) },
          { label: 'People', value: way('see-people', '/people', `${people} ${people === 1 ? 'person' : 'people'}`) },
          { label: 'Kitchens', value: way('see-kitchen', '/kitchens', count(facts.kitchens, 'kitchen')) },
          { label: 'Stock', value: way('see-stock', '/stock', count(facts.supplies, 'lot')) },
          { label: 'Lot numbers begin with', value: <span className="num">{head.code}</span> },
          { label: 'Kitchen clock', value: head.timeZone.replaceAll('_', ' ') },
          { label: 'Who holds a jar asks', value: head.askLine },
        ]}
      />
      {may(actor, 'edit-group') && <EditGroup groupId={actor.groupId} head={head} />}
    </Sheet>
  )
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
