import type { Metadata } from 'next'
import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { listHouseholds } from '@/lib/queries/list-households'
import { type ListedPerson, listPeople } from '@/lib/queries/list-people'
import { type Actor, ageName, roleName } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { limitName, skillName } from '@/shared/kitchen/skills'
import { formatClock } from '@/shared/time/kitchen-time'
import { Allergens } from '../allergens'
import { PersonEntries } from './person-entries'

export const metadata: Metadata = { title: 'People' }

const COLUMNS = [
  { key: 'name', head: 'Name' },
  { key: 'household', head: 'Household' },
  { key: 'role', head: 'Takes part as' },
  { key: 'skills', head: 'Can do' },
  { key: 'mind', head: 'Please mind' },
  { key: 'hours', head: 'Usual hours' },
] as const

/** Who takes part, with an account or without. */
export default async function PeoplePage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-people')
  const people = await listPeople(actor)
  const here = people.filter(({ active }) => active)
  const gone = people.filter(({ active }) => !active)
  return (
    <Page>
      <PageHead
        title={`${here.length} ${here.length === 1 ? 'person' : 'people'} here`}
        action={may(actor, 'invite') && <LinkButton href={`/g/${groupId}/invites`}>Invite somebody</LinkButton>}
      />
      <div className="stack">
        <Sheet lid="sunk" lidWords="Known">
          <Table caption="People who are here" captionHidden columns={COLUMNS} rows={here.map((person) => personRow(groupId, person))} />
        </Sheet>
        {gone.length > 0 && (
          <Sheet lid="sunk" lidWords="Settled" title="No longer here">
            <Table
              caption="People who are no longer here"
              captionHidden
              columns={COLUMNS}
              rows={gone.map((person) => personRow(groupId, person))}
            />
          </Sheet>
        )}
        {may(actor, 'edit-person') && <AddSomebody actor={actor} />}
      </div>
    </Page>
  )
}

function personRow(groupId: string, person: ListedPerson) {
  const { id, name, household, role, hasAccount, ageClass, skills, limits, allergies, availableFrom, availableUntil } = person
  return {
    id,
    cells: {
      name: (
        <Link className="way" href={`/g/${groupId}/people/${id}`} prefetch={false}>
          {name}
        </Link>
      ),
      household,
      role: `${roleName(role)}${ageClass === 'adult' ? '' : `, ${ageName(ageClass).toLowerCase()}`}${hasAccount ? '' : ', no account'}`,
      skills: skills.map(skillName).join(', '),
      mind: limits.length + allergies.length > 0 && (
        <span>
          {limits.map(limitName).join(', ')} {allergies.length > 0 && <Allergens words={allergies} />}
        </span>
      ),
      hours: availableFrom === null || availableUntil === null ? '' : `${formatClock(availableFrom)} to ${formatClock(availableUntil)}`,
    },
  }
}

async function AddSomebody({ actor }: { actor: Actor }) {
  const { groupId, householdId } = actor
  const households = (await listHouseholds(actor)).filter(({ id }) => may(actor, 'edit-person', id))
  return (
    <Sheet lid="flat" lidWords="If there is somebody else" title="Without an account">
      <p>A child, a guest, anybody who takes part and does not sign in. They can be planned for and named at a station.</p>
      <Fold summary="Add somebody without an account">
        <CommandForm command="add-person" groupId={groupId} formKey={freshKey()} next={`/g/${groupId}/people`} className="form">
          <SelectEntry
            name="householdId"
            label="Household"
            options={households.map(({ id, name }) => ({ value: id, label: name }))}
            first={householdId}
            required
          />
          <PersonEntries training={may(actor, 'change-role')} />
          <SubmitButton sending="Adding them">Add the person</SubmitButton>
        </CommandForm>
      </Fold>
    </Sheet>
  )
}
