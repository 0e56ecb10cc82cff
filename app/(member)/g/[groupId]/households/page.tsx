import type { Metadata } from 'next'
import Link from 'next/link'
import { CommandForm } from '@/app/_forms/command-form'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { listHouseholds } from '@/lib/queries/list-households'
import { may } from '@/shared/access/policy'
import { languageName } from '@/shared/people/languages'
import { Allergens } from '../allergens'
import { HouseholdEntries } from './household-entries'

export const metadata: Metadata = { title: 'Households' }

const COLUMNS = [
  { key: 'name', head: 'Household' },
  { key: 'headcount', head: 'People in it', numeric: true },
  { key: 'language', head: 'Language' },
  { key: 'allergens', head: 'Does not eat' },
  { key: 'contact', head: 'Contact' },
] as const

/** The households that claim jars and share costs. */
export default async function HouseholdsPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-households')
  const households = await listHouseholds(actor)
  const eaters = households.reduce((sum, { headcount }) => sum + headcount, 0)
  const rows = households.map(({ id, name, headcount, language, allergens, contact }) => ({
    id,
    cells: {
      name: (
        <Link className="way" href={`/g/${groupId}/households/${id}`} prefetch={false}>
          {name}
        </Link>
      ),
      headcount: `${headcount}`,
      language: languageName(language),
      allergens: <Allergens words={allergens} />,
      contact: contact || <span className="quiet">Not given</span>,
    },
  }))
  return (
    <Page>
      <PageHead
        title={`${households.length} ${households.length === 1 ? 'household' : 'households'}, ${eaters} people`}
        lead="Jars and costs go by household."
      />
      <div className="stack">
        <Sheet lid="sunk" lidWords="Known">
          <Table caption="Households" captionHidden columns={COLUMNS} rows={rows} />
        </Sheet>
        {may(actor, 'add-household') && (
          <Sheet lid="flat" lidWords="If there is another one" title="Add a household">
            <CommandForm
              command="add-household"
              groupId={groupId}
              formKey={freshKey()}
              next={`/g/${groupId}/households`}
              className="form side"
            >
              <HouseholdEntries />
              <div className="full">
                <SubmitButton sending="Adding it">Add the household</SubmitButton>
              </div>
            </CommandForm>
          </Sheet>
        )}
      </div>
    </Page>
  )
}
