import { stillHere } from '@/shared/people/still-here'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ShoppingPage } from '@/shared/supplies/day-list'
import { UNITS } from '@/shared/units/units'
import { sayAmount } from '@/shared/wording/say-shopping'

interface LeftOversProps {
  readonly page: ShoppingPage
  readonly groupId: string
  readonly dayId: string
  readonly edits: boolean
}

/** What is left and who has it: the next day's list begins with it. */
export function LeftOvers({ page: { items, pantry, households }, groupId, dayId, edits }: LeftOversProps) {
  const kept = new Set(pantry.filter(({ fromDayId }) => fromDayId === dayId).map(({ item }) => item))
  const over = items.filter((item) => item.sort === 'ingredient' && item.boughtAmount > 0 && item.over > 0 && !kept.has(item.key))
  if (pantry.length === 0 && (over.length === 0 || !edits)) return null
  const next = `/g/${groupId}/days/${dayId}/shopping`
  const owners = stillHere(households).map(({ id, name }) => ({ value: id, label: name }))
  return (
    <Sheet
      lid={over.length > 0 && edits ? 'domed' : 'sunk'}
      lidWords={over.length > 0 ? 'To settle' : 'Kept'}
      title="What is left, and who has it"
    >
      <ul className="list">
        {pantry.map(({ id, item, amount, unit, household, note }) => (
          <li key={id} className="row apart">
            <span>
              <b>{household ?? 'The group'}</b>: {sayAmount(amount, unit)} of {item}
              {note && <span className="quiet">, {note}</span>}
            </span>
            {edits && (
              <CommandForm command="use-up-left-over" groupId={groupId} formKey={freshKey()} next={next} fixed={{ leftOverId: id }}>
                <SubmitButton small kind="plain" sending="Saving">
                  Used up<span className="unseen">: {item}</span>
                </SubmitButton>
              </CommandForm>
            )}
          </li>
        ))}
      </ul>
      {edits &&
        over.map(({ key, over: amount, unit }) => (
          <Fold key={key} summary={`${sayAmount(amount, unit)} of ${key} are over: who takes it?`}>
            <CommandForm
              command="keep-left-over"
              groupId={groupId}
              formKey={freshKey()}
              next={next}
              fixed={{ dayId, item: key, unit }}
              className="form side"
            >
              <FieldEntry
                name="amount"
                label="Left"
                inputMode="decimal"
                unit={UNITS[unit].symbol}
                first={sayPlain(amount)}
                required
                short
              />
              <SelectEntry name="householdId" label="Who takes it" ask="the group keeps it" options={owners} required={false} />
              <FieldEntry name="note" label="Note" required={false} maxLength={120} />
              <div className="full">
                <SubmitButton kind="plain" sending="Saving">
                  Write it down
                </SubmitButton>
              </div>
            </CommandForm>
          </Fold>
        ))}
    </Sheet>
  )
}

const sayPlain = (amount: number) => Math.round(amount * 1000) / 1000
