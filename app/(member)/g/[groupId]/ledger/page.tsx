import type { Metadata } from 'next'
import { JarGaps } from '@/app/_drawings/jar-gaps'
import { EmptyState } from '@/app/_ui/empty-state'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { type JarLedgerPage, jarLedgerPage } from '@/lib/queries/jar-ledger'
import { may, reachOf } from '@/shared/access/policy'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { MOVEMENT_KINDS } from '@/shared/supplies/jar-ledger'
import { MOVEMENT_WORDS, sayBalance } from '@/shared/wording/say-ledger'
import { Entries } from './entries'
import { NoteJarsForm } from './note-jars-form'

export const metadata: Metadata = { title: 'Jar ledger' }

/** Jars lent and returned over the seasons: who owes how many back, and to whom. */
export default async function LedgerPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-jar-ledger')
  const page = await jarLedgerPage(actor)
  const edits = may(actor, 'edit-stock')
  return (
    <Page size="desk">
      <PageHead
        title={headline(page, reachOf(actor, 'see-jar-ledger') === 'any')}
        lead="A jar goes home with the food in it. What is handed over on a day stands here by itself."
        action={
          <LinkButton kind="plain" small href={`/g/${groupId}/ledger/ledger.csv`}>
            As a file (CSV)
          </LinkButton>
        }
      />
      <div className="stack">
        <Sheet lid={page.lines.length > 0 ? 'sunk' : 'flat'} lidWords="Added up" title="How everybody stands">
          {page.lines.length === 0 ? (
            <EmptyState drawing={<JarGaps />} text="No jar was lent, handed over or returned yet." />
          ) : (
            <Lines page={page} />
          )}
        </Sheet>
        {edits && <NoteJarsForm groupId={groupId} households={page.households} />}
        {page.entries.length > 0 && <Entries entries={page.entries} groupId={groupId} edits={edits} />}
      </div>
    </Page>
  )
}

function headline({ lines }: JarLedgerPage, isWhole: boolean): string {
  const owed = lines.reduce((sum, { balance }) => sum + Math.max(0, -balance), 0)
  if (lines.length === 0) return 'Jars lent and returned'
  if (owed === 0) return 'No jar is owed to the group'
  const jars = owed === 1 ? '1 jar' : `${owed} jars`
  return isWhole ? `${jars} of the group’s are in other cellars` : `You have ${jars} of the group’s`
}

function Lines({ page: { lines } }: { page: JarLedgerPage }) {
  const used = MOVEMENT_KINDS.filter((kind) => lines.some(({ sums }) => sums[kind] > 0))
  return (
    <Table
      caption="Jars by household, size and mouth"
      captionHidden
      columns={[
        { key: 'household', head: 'Household' },
        { key: 'jars', head: 'Jars' },
        ...used.map((kind) => ({ key: kind, head: MOVEMENT_WORDS[kind].head, numeric: true })),
        { key: 'balance', head: 'So it' },
      ]}
      rows={lines.map(({ household, householdId, size, mouth, sums, balance }) => ({
        id: `${householdId} ${size} ${mouth}`,
        cells: {
          household,
          jars: `${jarName(size, 2)}, ${mouth}`,
          ...sums,
          balance: <b>{sayBalance(balance)}</b>,
        },
      }))}
    />
  )
}
