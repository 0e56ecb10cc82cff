import type { Metadata } from 'next'
import { Notice } from '@/app/_ui/notice'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { Button } from '@/app/_ui/button'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { importDays } from '@/lib/queries/imports'
import { IMPORT_COLUMNS, IMPORT_KINDS, MOST_ROWS } from '@/shared/imports/import-kinds'
import { IMPORT_NAMES, sayImportRefusal } from '@/shared/wording/say-import'

export const metadata: Metadata = { title: 'Files in' }

interface ImportPageProps {
  readonly params: Promise<{ groupId: string }>
  readonly searchParams: Promise<{ refused?: string | string[] }>
}

/** Households, equipment, supplies and deliveries out of a table: read first, entered whole or not at all. */
export default async function ImportFormPage({ params, searchParams }: ImportPageProps) {
  const { groupId } = await params
  await requireActor(groupId, 'import')
  const [days, { refused }] = await Promise.all([importDays(groupId), searchParams])
  const refusal = sayImportRefusal(Array.isArray(refused) ? refused[0] : refused)
  return (
    <Page size="desk">
      <PageHead
        title="From a file"
        lead="The file is read first and shown to you, with every line that is broken. It is entered whole, or not at all."
      />
      <div className="stack">
        <Sheet lid="domed" lidWords="To choose" title="Read a file">
          {refusal && <Notice {...refusal} />}
          <form className="form side" method="post" encType="multipart/form-data" action={`/api/v1/groups/${groupId}/imports`}>
            <input type="hidden" name="_key" value={freshKey()} />
            <Select name="kind" label="What it holds" options={IMPORT_KINDS.map((value) => ({ value, label: IMPORT_NAMES[value] }))} />
            <Select
              name="dayId"
              label="For deliveries: which day"
              ask="no deliveries"
              required={false}
              options={days.map(({ id, name, date }) => ({ value: id, label: `${name}, ${date}` }))}
            />
            <div className="field full">
              <label htmlFor="import-file">The file</label>
              <input id="import-file" className="input" type="file" name="file" accept=".csv,text/csv" required />
              <span className="field-hint">CSV in UTF-8, at most {MOST_ROWS.toLocaleString('en-US')} lines.</span>
            </div>
            <div className="full">
              <Button>Read it</Button>
            </div>
          </form>
        </Sheet>
        {IMPORT_KINDS.map((kind) => (
          <Sheet key={kind} lid="flat" lidWords="To read" title={IMPORT_NAMES[kind]}>
            <p>The first line names the columns, in any order. Several words in one cell stand with semicolons between.</p>
            <ul className="list">
              {IMPORT_COLUMNS[kind].map(({ head, isNeeded, example }) => (
                <li key={head} className="row apart">
                  <span>
                    <b>{head}</b>
                    {isNeeded && ', needed'}
                  </span>
                  <span className="quiet">{example}</span>
                </li>
              ))}
            </ul>
          </Sheet>
        ))}
      </div>
    </Page>
  )
}
