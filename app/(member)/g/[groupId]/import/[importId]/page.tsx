import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { CommandForm } from '@/app/_forms/command-form'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { type ImportPage, importPage } from '@/lib/queries/imports'
import { IMPORT_NAMES } from '@/shared/wording/say-import'

export const metadata: Metadata = { title: 'Files in' }

/** What is in a file, and what is wrong with it; the button that enters it is there only when nothing is. */
export default async function ImportPreviewPage({ params }: { params: Promise<{ groupId: string; importId: string }> }) {
  const { groupId, importId } = await params
  await requireActor(groupId, 'import')
  const page = await importPage(groupId, importId)
  if (!page) notFound()
  const path = `/g/${groupId}/import`
  return (
    <Page size="desk">
      <PageHead
        kicker={`${IMPORT_NAMES[page.kind]}, ${page.name}, read by ${page.readBy}`}
        title={headline(page)}
        lead={page.problemCount > 0 ? 'Nothing was entered. Correct these lines in the table and read it again.' : undefined}
        action={
          <LinkButton kind="plain" small href={path}>
            {page.isEntered ? 'Another file' : 'Read it again'}
          </LinkButton>
        }
      />
      <div className="stack">
        {page.problemCount > 0 && <Problems page={page} />}
        {page.problemCount === 0 && !page.isEntered && (
          <Sheet lid="domed" lidWords="To enter" title="These are the first lines">
            <Table
              caption="First lines of the file"
              captionHidden
              scrolls
              columns={[{ key: 'line', head: 'Line', numeric: true }, ...page.header.map((head, index) => ({ key: `c${index}`, head }))]}
              rows={page.first.map(({ line, cells }) => ({
                id: String(line),
                cells: { line, ...Object.fromEntries(page.header.map((_, index) => [`c${index}`, cells[index] ?? ''])) },
              }))}
            />
            <CommandForm
              command="enter-import"
              groupId={groupId}
              formKey={freshKey()}
              next={`${path}/${page.id}`}
              fixed={{ importId: page.id }}
            >
              <SubmitButton sending="Entering">
                Enter all {page.rowCount.toLocaleString('en-US')} {page.rowCount === 1 ? 'line' : 'lines'}
              </SubmitButton>
            </CommandForm>
          </Sheet>
        )}
      </div>
    </Page>
  )
}

function headline({ isEntered, problemCount, rowCount }: ImportPage): string {
  const lines = `${rowCount.toLocaleString('en-US')} ${rowCount === 1 ? 'line' : 'lines'}`
  if (isEntered) return `${lines} entered`
  if (problemCount === 0) return `${lines}, and all can be entered`
  return `${problemCount.toLocaleString('en-US')} ${problemCount === 1 ? 'thing is' : 'things are'} wrong in ${lines}`
}

function Problems({ page: { problems, problemCount } }: { page: ImportPage }) {
  return (
    <Sheet lid="domed" title="What is wrong">
      <ol className="list">
        {problems.map(({ line, field, say }) => (
          <li key={`${line} ${field} ${say}`}>
            <b>
              Line {line}
              {field && `, ${field}`}:
            </b>{' '}
            {say}
          </li>
        ))}
      </ol>
      {problemCount > problems.length && <p>And {(problemCount - problems.length).toLocaleString('en-US')} more.</p>}
    </Sheet>
  )
}
