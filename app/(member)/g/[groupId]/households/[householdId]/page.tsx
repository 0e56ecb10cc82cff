import Link from 'next/link'
import { notFound } from 'next/navigation'
import { CommandForm } from '@/app/_forms/command-form'
import { Facts } from '@/app/_ui/facts'
import { Fold } from '@/app/_ui/fold'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { type HouseholdPage as Household, householdPage } from '@/lib/queries/household-page'
import { type Actor, roleName } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { languageName } from '@/shared/people/languages'
import { Allergens } from '../../allergens'
import { PersonEntries } from '../../people/person-entries'
import { HouseholdEntries } from '../household-entries'
import { Leaving } from './leaving'

/** One household: what is known of it and who belongs to it. */
export default async function HouseholdPage({ params }: { params: Promise<{ groupId: string; householdId: string }> }) {
  const { groupId, householdId } = await params
  const actor = await requireActor(groupId, 'see-households')
  const household = await householdPage(actor, householdId)
  if (!household) notFound()
  return (
    <Page>
      <PageHead kicker="Household" title={household.name} />
      <div className="two">
        <div>
          <Known actor={actor} household={household} />
          {may(actor, 'remove-household') && household.id !== actor.householdId && <Leaving groupId={groupId} household={household} />}
        </div>
        <div>
          <Belonging actor={actor} household={household} />
        </div>
      </div>
    </Page>
  )
}

function Known({ actor: { groupId, ...actor }, household }: { actor: Actor; household: Household }) {
  const { id, headcount, language, contact, doesNotEat, seen } = household
  return (
    <Sheet lid="sunk" lidWords="Known" title="What the group knows">
      <Facts
        facts={[
          { label: 'People in it', value: `${headcount} ${headcount === 1 ? 'person' : 'people'}` },
          { label: 'Language', value: languageName(language) },
          { label: 'Contact', value: contact || 'Not given' },
          { label: 'Does not eat', value: <Allergens words={doesNotEat} /> },
        ]}
      />
      {may(actor, 'edit-household', id) && (
        <Fold summary="Change it">
          <CommandForm
            command="edit-household"
            groupId={groupId}
            formKey={freshKey()}
            next={`/g/${groupId}/households/${id}`}
            fixed={{ householdId: id, seen }}
            className="form"
          >
            <HouseholdEntries first={household} />
            <SubmitButton sending="Saving">Save the household</SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}

function Belonging({ actor, household }: { actor: Actor; household: Household }) {
  const { groupId } = actor
  return (
    <Sheet lid="sunk" lidWords="Known" title="Who belongs to it">
      <ul className="list">
        {household.people.map(({ id, name, role, active }) => (
          <li key={id}>
            <Link className="way" href={`/g/${groupId}/people/${id}`} prefetch={false}>
              {name}
            </Link>
            <p className="quiet">{active ? roleName(role) : 'No longer here'}</p>
          </li>
        ))}
      </ul>
      {household.people.length === 0 && <p>Nobody yet. Invite somebody, or enter who takes part without an account.</p>}
      {may(actor, 'edit-person', household.id) && (
        <Fold summary="Add somebody without an account">
          <CommandForm
            command="add-person"
            groupId={groupId}
            formKey={freshKey()}
            next={`/g/${groupId}/households/${household.id}`}
            fixed={{ householdId: household.id }}
            className="form"
          >
            <PersonEntries training={may(actor, 'change-role')} />
            <SubmitButton sending="Adding them">Add the person</SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}
