import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import { formatMoney, plainMoney } from '@/shared/reckoning/money'
import type { ShoppingItem, ShoppingPage } from '@/shared/supplies/day-list'
import { sayNumber } from '@/shared/units/say-kitchen-amount'
import { UNITS, type UnitId } from '@/shared/units/units'
import { sayPacks } from '@/shared/wording/say-shopping'

interface PackFormsProps {
  readonly item: ShoppingItem
  readonly page: ShoppingPage
  readonly groupId: string
  readonly dayId: string
  readonly edits: boolean
}

/** What else would do, and how it is sold. */
export function PackForms({ item, page, groupId, dayId, edits }: PackFormsProps) {
  const { plan } = item
  const { currency } = page.day
  const price = (minor: number | null) => (minor === null ? 'price not known' : formatMoney(minor, currency))
  return (
    <>
      {plan.alternatives.length > 0 && (
        <ul className="list">
          {plan.alternatives.map((other) => (
            <li key={sayPacks(other)}>
              Or {sayPacks(other)}: {price(other.price)}
              {other.over > 0 && `, ${sayNumber(other.over)} over`}
            </li>
          ))}
        </ul>
      )}
      {plan.short.length > 0 && <p>The shops have none of: {plan.short.map(({ label }) => label).join(', ')}.</p>}
      {plan.unlike.length > 0 && (
        <p>
          {plan.unlike.map(({ label }) => label).join(', ')}: say how much of it is in one in {nameOf(item.unit)}, so that it can be
          counted.
        </p>
      )}
      {edits && (
        <>
          {item.packs.map((pack) => (
            <Fold key={pack.id} summary={`Change ${pack.label}, ${price(pack.price)}`}>
              <CommandForm command="edit-pack" {...place(groupId, dayId)} fixed={{ packId: pack.id }} className="form side">
                <Figures item={item} holds={pack.holds} unit={pack.unit} price={pack.price} currency={currency} />
                <SelectEntry name="isShort" label="In the shops" options={SHORT} first={pack.isShort ? 'yes' : 'no'} />
                <div className="full">
                  <SubmitButton kind="plain" sending="Saving">
                    Save the pack
                  </SubmitButton>
                </div>
              </CommandForm>
            </Fold>
          ))}
          <Fold summary="Add a pack">
            <CommandForm command="add-pack" {...place(groupId, dayId)} fixed={{ item: item.key }} className="form side">
              <FieldEntry name="label" label="What is one pack?" hint="4 lb bag, box of 12" maxLength={40} required />
              <Figures item={item} holds={null} unit={item.unit} price={null} currency={currency} />
              <div className="full">
                <SubmitButton kind="plain" sending="Adding it">
                  Add the pack
                </SubmitButton>
              </div>
            </CommandForm>
          </Fold>
        </>
      )}
    </>
  )
}

const SHORT = [
  { value: 'no', label: 'there' },
  { value: 'yes', label: 'they have none' },
]

const place = (groupId: string, dayId: string) => ({ groupId, formKey: freshKey(), next: `/g/${groupId}/days/${dayId}/shopping` })

const nameOf = (unit: UnitId) => UNITS[unit].symbol || 'pieces'

interface FiguresProps {
  readonly item: ShoppingItem
  readonly holds: number | null
  readonly unit: UnitId
  readonly price: number | null
  readonly currency: string
}

/** How much one holds, in a unit of the same kind as the recipe's: a cup of sugar is no pound of it. */
function Figures({ item, holds, unit, price, currency }: FiguresProps) {
  const { dimension } = UNITS[item.unit]
  const units = (Object.keys(UNITS) as UnitId[]).filter(
    (id) => UNITS[id].dimension === dimension && (dimension !== 'count' || id === item.unit),
  )
  const options = [...new Set([item.unit, ...units])].map((id) => ({ value: id, label: UNITS[id].name }))
  const hint = /sugar/.test(item.key) && dimension === 'volume' ? 'A pound of sugar is about 2½ cups (common practice).' : undefined
  return (
    <>
      <FieldEntry name="holds" label="One holds" inputMode="decimal" first={holds} hint={hint} required short />
      <SelectEntry name="unit" label="Measured in" options={options} first={unit} />
      <FieldEntry
        name="price"
        label="One costs"
        inputMode="decimal"
        unit={currency}
        first={price === null ? null : plainMoney(price, currency)}
        required={false}
        short
      />
    </>
  )
}
