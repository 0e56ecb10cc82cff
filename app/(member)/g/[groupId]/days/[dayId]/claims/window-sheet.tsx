import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ClaimRoom } from '@/lib/queries/claim-room'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import type { DayHead } from '@/lib/queries/day-head'
import type { ClaimWindow } from '@/shared/day/claim-window'
import { productNoun } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayMoment } from '@/shared/time/say-moment'

type Props = { groupId: string; day: DayHead; window: ClaimWindow; products: readonly OfferedProduct[]; room: ClaimRoom; next: string }

/** For the organiser: when households may ask and how many jars each. */
export function WindowSheet({ groupId, day, window, products, room, next }: Props) {
  const isOpen = window.kind === 'open'
  const isOver = window.kind === 'over'
  return (
    <Sheet lid={isOver ? 'sunk' : 'flat'} lidWords={isOver ? 'Over' : isOpen ? 'Open' : 'Not open yet'} title="The time for asking">
      <p>{sayWindow(day, window)}</p>
      {day.earlyMinutes > 0 && <p>Who promised produce or hours may ask {day.earlyMinutes / 60} h before the others.</p>}
      {day.householdCap !== null && <p>Each household asks for at most {day.householdCap} jars of this day.</p>}
      {(day.state === 'draft' || day.state === 'claiming') && (
        <>
          <Fold summary="Change times and caps">
            <WindowForm {...{ groupId, day, next }} />
            {products.map((product) => (
              <CapForm key={product.id} {...{ groupId, product, next }} cap={room.caps.get(product.id)} />
            ))}
          </Fold>
          {day.state === 'claiming' && !isOver && (
            <CommandForm command="close-claims" groupId={groupId} formKey={freshKey()} next={next} fixed={{ dayId: day.id }}>
              <SubmitButton kind="plain" sending="Closing">
                Close the claims now
              </SubmitButton>
            </CommandForm>
          )}
        </>
      )}
    </Sheet>
  )
}

/** In the moments of the clock on the kitchen's wall. */
function sayWindow({ state, claimsOpenLocal, claimsCloseLocal }: DayHead, window: ClaimWindow): string {
  const until = claimsCloseLocal ? `until ${sayMoment(claimsCloseLocal)}` : 'until you close the claims'
  if (state === 'draft')
    return `Households may ask ${claimsOpenLocal ? `from ${sayMoment(claimsOpenLocal)}` : 'as soon as you open the claims'}, ${until}.`
  if (window.kind === 'over') return claimsCloseLocal ? `It ended ${sayMoment(claimsCloseLocal)}.` : 'It is over.'
  const isLater = window.kind === 'not-yet' || (window.kind === 'open' && window.isEarly)
  return isLater && claimsOpenLocal ? `It opens by itself ${sayMoment(claimsOpenLocal)}, ${until}.` : `Households may ask ${until}.`
}

function WindowForm({ groupId, day, next }: Pick<Props, 'groupId' | 'day' | 'next'>) {
  return (
    <CommandForm
      command="set-claim-window"
      groupId={groupId}
      formKey={freshKey()}
      next={next}
      fixed={{ dayId: day.id, version: day.version }}
      className="form"
    >
      <FieldEntry
        name="claimsOpenAt"
        type="datetime-local"
        label="Opens"
        hint="On the kitchen’s clock. Empty: as soon as you open the claims."
        first={day.claimsOpenLocal}
      />
      <FieldEntry
        name="earlyHours"
        inputMode="numeric"
        short
        unit="h"
        label="Head start for who promised produce or hours"
        first={day.earlyMinutes / 60}
      />
      <FieldEntry
        name="claimsCloseAt"
        type="datetime-local"
        label="Closes"
        hint="By itself. Empty: when you close the claims."
        first={day.claimsCloseLocal}
      />
      <FieldEntry
        name="householdCap"
        inputMode="numeric"
        short
        unit="jars"
        label="At most for one household, all products"
        hint="Empty: no cap."
        first={day.householdCap}
      />
      <SubmitButton kind="plain" sending="Saving">
        Save times and cap
      </SubmitButton>
    </CommandForm>
  )
}

type CapProps = Pick<Props, 'groupId' | 'next'> & { product: OfferedProduct; cap?: number }

function CapForm({ groupId, product, next, cap }: CapProps) {
  const noun = productNoun(product.recipe.title)
  return (
    <CommandForm
      command="set-offer-cap"
      groupId={groupId}
      formKey={freshKey()}
      next={next}
      fixed={{ preparationId: product.id }}
      className="form"
    >
      <FieldEntry
        name="householdCap"
        inputMode="numeric"
        short
        unit={jarName(product.jarSize, 2)}
        label={`At most for one household: ${noun}`}
        hint="Empty: no cap."
        first={cap}
      />
      <SubmitButton kind="plain" small sending="Saving">
        Save the cap of {noun}
      </SubmitButton>
    </CommandForm>
  )
}
