'use client'

import { useState } from 'react'
import { CommandForm } from '@/app/_forms/command-form'
import { FieldEntry, SelectEntry } from '@/app/_forms/entries'
import type { FormState } from '@/app/_forms/form-state'
import { Fold } from '@/app/_ui/fold'
import { SubmitButton } from '@/app/_ui/submit-button'
import { decodeForm } from '@/shared/forms/decode-form'
import { useKeeper } from './keep-ticks'

interface TickFormProps {
  readonly groupId: string
  readonly dayId: string
  readonly item: string
  readonly formKey: string
  readonly purchaseId: string
  readonly next: string
  readonly pack: string
  readonly packs: number
  readonly holds: number
  readonly unit: string
  /** "18.00"; empty when nobody knows the price. */
  readonly cost: string
  readonly currency: string
  readonly pool: string
  readonly householdId: string
  /** More than one where the organiser ticks for somebody. */
  readonly households: readonly { readonly value: string; readonly label: string }[]
}

/** The taps that were made on one drawing of the page, each with its own key and the receipt's. */
interface Taps {
  readonly of: string
  readonly taps: readonly (readonly [key: string, purchaseId: string])[]
}

/** One tap ticks a line. Kept on the phone first; without script it is a plain form. */
export function TickForm(props: TickFormProps) {
  const [made, setMade] = useState<Taps>({ of: props.formKey, taps: [] })
  // A page that was drawn again brings a new key: what was ticked before stands on it by itself.
  const taps = made.of === props.formKey ? made.taps : []
  const [key, purchaseId] = taps.at(-1) ?? [props.formKey, props.purchaseId]
  const { add } = useKeeper()
  const isMore = taps.length > 0

  async function keep(filled: FormData): Promise<FormState | null> {
    const { input } = decodeForm(filled)
    const { dayId: _, ...body } = input
    await add({
      ...{ key, type: 'buy-item', purchaseId, item: props.item, body, state: { kind: 'kept' } },
      said: `${body.packs} × ${props.pack}, ${body.cost} ${props.currency}`,
    })
    setMade({ of: props.formKey, taps: [...taps, [crypto.randomUUID(), crypto.randomUUID()]] })
    return null
  }

  const form = <TickFields {...props} key={taps.length} formKey={key} purchaseId={purchaseId} keep={keep} />
  return isMore ? <Fold summary={`More of it`}>{form}</Fold> : form
}

function TickFields({ keep, ...props }: TickFormProps & { keep: (filled: FormData) => Promise<FormState | null> }) {
  const { groupId, dayId, item, formKey, purchaseId, next, pack, packs, holds, unit, cost, currency, pool, householdId, households } = props
  const isKnown = cost !== ''
  const price = (
    <FieldEntry name="cost" label="Paid together" inputMode="decimal" unit={currency} first={cost} maxLength={20} required short />
  )
  const fixed = { dayId, item, purchaseId, pack, holds, unit, pool, ...(households.length > 1 ? {} : { householdId }) }
  return (
    <CommandForm command="buy-item" groupId={groupId} formKey={formKey} next={next} fixed={fixed} className="form tick" keep={keep}>
      {!isKnown && price}
      <SubmitButton sending="Saving">
        Bought<span className="unseen"> {item}</span>
      </SubmitButton>
      <Fold summary={isKnown ? 'Another number or price' : 'Another number'}>
        <div className="form">
          <FieldEntry name="packs" label={`How many: ${pack}`} inputMode="decimal" first={packs} required short />
          {isKnown && price}
          {households.length > 1 && <SelectEntry name="householdId" label="Who pays" options={households} first={householdId} />}
        </div>
      </Fold>
    </CommandForm>
  )
}
