import type { Metadata } from 'next'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry } from '@/app/_forms/entries'
import { EmptyState } from '@/app/_ui/empty-state'
import { Fold } from '@/app/_ui/fold'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { Table } from '@/app/_ui/table'
import { requireActor } from '@/lib/auth/current-actor'
import { freshKey } from '@/lib/http/fresh-key'
import { dayProducts } from '@/lib/queries/day-claims'
import { dayForecast } from '@/lib/queries/day-forecast'
import { requireDayHead } from '@/lib/queries/day-head'
import { type DayIngredients, dayIngredients } from '@/lib/queries/day-ingredients'
import { may } from '@/shared/access/policy'
import { sayShortDate } from '@/shared/time/calendar-date'
import { sayQuantity } from '@/shared/wording/say-quantity'
import { DayPlace } from '../_overview/day-place'
import { JarsNow } from '../_overview/jars-now'
import { ReceiveForm } from './receive-form'

export const metadata: Metadata = { title: 'What came in' }

const OPEN = ['claiming', 'planned', 'running']

/** Every quantity of one ingredient from one source: what each jar is traced back to. */
export default async function IngredientsPage({ params }: { params: Promise<{ groupId: string; dayId: string }> }) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-floor')
  const [day, page, products] = await Promise.all([
    requireDayHead(groupId, dayId),
    dayIngredients(groupId, dayId),
    dayProducts(groupId, dayId),
  ])
  const forecast = await dayForecast(groupId, dayId, products)
  const mayReceive = OPEN.includes(day.state) && may(actor, 'receive-ingredients')
  return (
    <Page size="desk">
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} />}
        title="What came in"
        lead="Each line is one lot: one ingredient, from one source, on one day. Every jar is traced back to its lots."
      />
      <div className="stack">
        {mayReceive && page.promised.length > 0 && <Promised page={page} groupId={groupId} dayId={dayId} />}
        <Sheet lid={page.lots.length > 0 ? 'sunk' : 'flat'} lidWords="Received" title="Received">
          {page.lots.length === 0 ? <EmptyState text="Nothing was received yet." /> : <Lots page={page} />}
        </Sheet>
        <JarsNow {...{ day, products, forecast }} />
        {mayReceive && <ReceiveForm groupId={groupId} dayId={dayId} date={day.date} page={page} />}
      </div>
    </Page>
  )
}

function Lots({ page: { lots } }: { page: DayIngredients }) {
  return (
    <Table
      caption="Ingredient lots of the day"
      captionHidden
      columns={[
        { key: 'code', head: 'Lot' },
        { key: 'item', head: 'What' },
        { key: 'quantity', head: 'How much', numeric: true },
        { key: 'from', head: 'From' },
        { key: 'on', head: 'Picked or bought' },
        { key: 'contains', head: 'Contains' },
        { key: 'batches', head: 'Went into' },
      ]}
      rows={lots.map((lot) => ({
        id: lot.id,
        cells: {
          code: <span className="num">{lot.code}</span>,
          item: lot.condition ? `${lot.item} (${lot.condition})` : lot.item,
          quantity:
            lot.culled > 0
              ? `${sayQuantity(lot.quantity, lot.unit)}, ${sayQuantity(lot.culled, lot.unit)} sorted out`
              : sayQuantity(lot.quantity, lot.unit),
          from: lot.from,
          on: sayShortDate(lot.receivedOn),
          contains: lot.allergens.join(', '),
          batches: lot.batches.join(', '),
        },
      }))}
    />
  )
}

const AMOUNT = { type: 'number', inputMode: 'decimal', step: '0.001', short: true } as const

/** Promises become lots with one tap; what was weighed in takes the place of what was promised. */
function Promised({ page: { promised }, groupId, dayId }: { page: DayIngredients; groupId: string; dayId: string }) {
  return (
    <Sheet lid="domed" title="Promised, not here yet">
      <ul className="list">
        {promised.map(({ id, item, quantity, unit, household }) => (
          <li key={id}>
            <CommandForm
              command="receive-ingredients"
              groupId={groupId}
              formKey={freshKey()}
              next={`/g/${groupId}/days/${dayId}/ingredients`}
              fixed={{ dayId, pledgeId: id }}
              className="row apart"
            >
              <span>
                <b>{household}</b>: {sayQuantity(quantity, unit)} of {item}
              </span>
              <SubmitButton small sending="Saving">
                It is here
              </SubmitButton>
              <Fold summary="It weighs something else, or some is sorted out">
                <div className="form side">
                  <FieldEntry name="quantity" label={`How much came, ${unit}`} {...AMOUNT} min="0.001" first={quantity} />
                  <FieldEntry name="culled" label={`Of that, sorted out, ${unit}`} {...AMOUNT} min="0" required={false} />
                </div>
              </Fold>
            </CommandForm>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
