import type { Metadata } from 'next'
import { JarLabel } from '@/app/_drawings/jar-label'
import { buttonClass } from '@/app/_ui/button'
import { EmptyState } from '@/app/_ui/empty-state'
import { Field } from '@/app/_ui/field'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Select } from '@/app/_ui/select'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { qrModules } from '@/lib/print/qr-modules'
import { requireDayHead } from '@/lib/queries/day-head'
import { type DayLabel, labelBatches, labelJars } from '@/lib/queries/label-jars'
import { productName } from '@/shared/day/product-name'
import { LabelPrintQuery } from '@/shared/forms/label-print'
import { sayShortDate } from '@/shared/time/calendar-date'
import { jarAddress, sayBestBy, sayJarAddress, sayJarSize, SPOILAGE_LINE } from '@/shared/trace/label-facts'
import { LABEL_SHEETS } from '@/shared/trace/label-sheets'
import { SAY_COLD, SAY_USE_BY } from '@/shared/wording/say-cold'
import { sayLabelNote } from '@/shared/wording/say-labels'
import { DayPlace } from '../_overview/day-place'

export const metadata: Metadata = { title: 'Labels' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

const SHOWN = 8

/** Labels of the sealed jars: one batch as it will look, and the sheet to print it on. */
export default async function LabelsPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  await requireActor(groupId, 'print-labels')
  const [day, batches, asked] = await Promise.all([requireDayHead(groupId, dayId), labelBatches(groupId, dayId), searchParams])
  const query = LabelPrintQuery.safeParse(asked)
  const chosen = query.success ? query.data : LabelPrintQuery.parse({})
  const batch = batches.find(({ code }) => code === chosen.batch)?.code ?? batches[0]?.code
  const labels = batch ? await labelJars(groupId, dayId, batch) : []
  const path = `/g/${groupId}/days/${dayId}`
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title={labels.length > 0 ? `${labels.length} labels of batch ${batch}` : 'No labels yet'}
        lead="Only jars whose seal was checked get one, and those that are kept cold. Put labels on after the seal check, one batch at a time."
      />
      {labels.length === 0 ? (
        <EmptyState text="No jar is sealed yet." action={<LinkButton href={`${path}/seal-check`}>Seal check</LinkButton>} />
      ) : (
        <div className="stack">
          <Sheet lid="sunk" lidWords="Ready to print" title="Print">
            <form method="get" action={`${path}/labels/sheet.pdf`} className="form side">
              <Select
                name="batch"
                label="Which batch?"
                typed={batch}
                options={[
                  ...batches.map(({ code, title, jars }) => ({
                    value: code,
                    label: `${code}: ${jars} of ${productName(title).toLowerCase()}`,
                  })),
                  { value: '', label: 'all batches, one after the other' },
                ]}
              />
              <Select
                name="sheet"
                label="On which sheet?"
                typed={chosen.sheet}
                options={LABEL_SHEETS.map(({ id, title }) => ({ value: id, label: title }))}
              />
              <Field
                name="start"
                label="From which label of the sheet?"
                hint="1 is a fresh sheet; counted row by row."
                type="number"
                inputMode="numeric"
                min={1}
                max={100}
                typed={chosen.start}
                short
              />
              <div className="full dos across">
                <button type="submit" className={buttonClass('do')}>
                  Get the sheet (PDF)
                </button>
                <button type="submit" className={buttonClass('plain')} formAction={`${path}/labels`}>
                  Look at this batch
                </button>
              </div>
            </form>
            <p className="src">{sayLabelNote(labels, batch, day.date)}</p>
          </Sheet>
          <div className="label-sheet">
            {labels.slice(0, SHOWN).map((label) => (
              <JarLabel key={label.serial} facts={drawn(label)} />
            ))}
          </div>
          {labels.length > SHOWN && <p className="quiet">And {labels.length - SHOWN} more like these.</p>}
        </div>
      )}
    </Page>
  )
}

function drawn(label: DayLabel): Parameters<typeof JarLabel>[0]['facts'] {
  const [size, volume] = sayJarSize(label.size)
  return {
    product: label.product,
    produce: label.produce,
    size,
    volume,
    contains: label.allergens,
    madeOn: sayShortDate(label.cannedOn),
    useBy: label.isCold ? null : sayBestBy(label.cannedOn),
    process: label.isCold ? `${SAY_COLD}. ${SAY_USE_BY}` : label.process,
    ask: `${SPOILAGE_LINE} Ask ${label.group}.`,
    lot: label.lotNumber,
    serial: label.jarLabel,
    code: { modules: qrModules(jarAddress(label.origin, label.serial)), address: sayJarAddress(label.origin, label.serial) },
  }
}
