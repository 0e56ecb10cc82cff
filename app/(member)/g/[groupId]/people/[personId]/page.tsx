import { notFound } from 'next/navigation'
import { CommandForm } from '@/app/_forms/command-form'
import { SelectEntry } from '@/app/_forms/entries'
import { Facts } from '@/app/_ui/facts'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { listHouseholds } from '@/lib/queries/list-households'
import { type PersonPage as Person, personPage } from '@/lib/queries/person-page'
import { type Actor, ageName, ROLES, roleName } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { limitName, skillName } from '@/shared/kitchen/skills'
import { languageName } from '@/shared/people/languages'
import { formatClock } from '@/shared/time/kitchen-time'
import { Allergens } from '../../allergens'
import { PersonEntries } from '../person-entries'

/** One person: what they can do, what to mind, and what they may do here. */
export default async function PersonPage({ params }: { params: Promise<{ groupId: string; personId: string }> }) {
  const { groupId, personId } = await params
  const actor = await requireActor(groupId, 'see-people')
  const person = await personPage(actor, personId)
  if (!person) notFound()
  const edits = may(actor, 'edit-person', person.householdId)
  return (
    <Page>
      <PageHead
        kicker={`${roleName(person.role)}, household ${person.household}${person.hasAccount ? '' : ', without an account'}`}
        title={person.name}
        lead={person.active ? undefined : 'No longer here: takes no part, and what was done stays.'}
      />
      <div className="two wide-first">
        {edits ? <Editing actor={actor} person={person} /> : <Reading person={person} />}
        <div>{may(actor, 'change-role') && <Standing actor={actor} person={person} />}</div>
      </div>
    </Page>
  )
}

function Reading({ person }: { person: Person }) {
  const { ageClass, skills, limits, allergies, languages, availableFrom, availableUntil } = person
  const hours =
    availableFrom === null || availableUntil === null ? 'Not given' : `${formatClock(availableFrom)} to ${formatClock(availableUntil)}`
  return (
    <Sheet lid="sunk" lidWords="Known" title="What the group knows">
      <Facts
        facts={[
          { label: 'Age', value: ageName(ageClass) },
          { label: 'Can do', value: skills.map(skillName).join(', ') || 'Nothing noted' },
          { label: 'Please mind', value: limits.map(limitName).join(', ') || 'Nothing noted' },
          { label: 'Allergies', value: <Allergens words={allergies} /> },
          { label: 'Speaks', value: languages.map(languageName).join(', ') || 'Not given' },
          { label: 'Usual hours', value: hours },
        ]}
      />
    </Sheet>
  )
}

async function Editing({ actor, person }: { actor: Actor; person: Person }) {
  const { groupId } = actor
  const moves = may(actor, 'change-role')
  const households = moves ? await listHouseholds(actor) : []
  return (
    <Sheet lid="sunk" lidWords="Known" title="What the group knows">
      <CommandForm
        command="edit-person"
        groupId={groupId}
        formKey={freshKey()}
        next={`/g/${groupId}/people/${person.id}`}
        fixed={{ personId: person.id, seen: person.seen }}
        className="form"
      >
        {moves && (
          <SelectEntry
            name="householdId"
            label="Household"
            options={households.map(({ id, name }) => ({ value: id, label: name }))}
            first={person.householdId}
          />
        )}
        <PersonEntries first={person} training={moves} />
        <SubmitButton sending="Saving">Save the person</SubmitButton>
      </CommandForm>
    </Sheet>
  )
}

function Standing({ actor: { groupId }, person: { id, name, role, active, hasAccount } }: { actor: Actor; person: Person }) {
  const next = `/g/${groupId}/people/${id}`
  return (
    <Sheet lid="flat" lidWords="For the organiser" title="What they may do here">
      <CommandForm
        command="change-person-role"
        groupId={groupId}
        formKey={freshKey()}
        next={next}
        fixed={{ personId: id }}
        className="form"
      >
        <SelectEntry
          name="role"
          label="Takes part as"
          hint={hasAccount ? 'Counts from their next tap.' : 'Counts once they have an account.'}
          options={ROLES.map((value) => ({ value, label: roleName(value) }))}
          first={role}
        />
        <SubmitButton kind="plain" sending="Saving">
          Save the role
        </SubmitButton>
      </CommandForm>
      <hr />
      <CommandForm
        command="set-person-active"
        groupId={groupId}
        formKey={freshKey()}
        next={next}
        fixed={{ personId: id, active: active ? 'no' : 'yes' }}
      >
        <SubmitButton
          kind={active ? 'grave' : 'plain'}
          sending="Saving"
          consequence={active ? 'Takes no part from the next tap on. Nothing is deleted.' : undefined}
        >
          {active ? `${name} is no longer here` : `${name} is here again`}
        </SubmitButton>
      </CommandForm>
    </Sheet>
  )
}
