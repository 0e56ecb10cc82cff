import { CommandForm } from '@/app/_forms/command-form'
import { SelectEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { OpenSplit } from '@/lib/queries/claim-room'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import { productNoun } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { StepperEntry } from '../_floor/stepper-entry'

type Common = { groupId: string; householdId: string; next: string }

type OffersProps = Common & { splits: readonly OpenSplit[]; products: readonly OfferedProduct[] }

/** Parts of other households' claims that are offered to this one. They come first, since somebody waits for the answer. */
export function SplitOffers({ groupId, householdId, next, splits, products }: OffersProps) {
  return splits.flatMap((split) => {
    const product = products.find(({ id }) => id === split.preparationId)
    if (!product || split.toId !== householdId) return []
    const jars = `${split.jars} ${jarName(product.jarSize, split.jars)} of ${productNoun(product.recipe.title)}`
    const answer = (value: 'accept' | 'decline', says: string) => (
      <CommandForm
        command="answer-split"
        groupId={groupId}
        formKey={freshKey()}
        next={next}
        fixed={{ splitId: split.id, householdId, answer: value }}
      >
        <SubmitButton kind={value === 'accept' ? 'do' : 'plain'} sending="Sending">
          {says}
        </SubmitButton>
      </CommandForm>
    )
    return [
      <Sheet key={split.id} lid="domed" title={`${split.fromName} offers you ${jars}`}>
        <p>They come out of {split.fromName}’s claim and into yours at once; nothing else of the day changes.</p>
        {answer('accept', `Take ${split.jars === 1 ? 'it' : `the ${split.jars}`}`)}
        {answer('decline', 'No, thank you')}
      </Sheet>,
    ]
  })
}

type GiveProps = Common & {
  product: OfferedProduct
  splits: readonly OpenSplit[]
  others: readonly { id: string; name: string }[]
}

/** A part of the claim for another household: offered until the other takes it. Nothing while there is nothing to give. */
export function GiveSheet({ groupId, householdId, next, product, splits, others }: GiveProps) {
  const held = product.claims.get(householdId) ?? 0
  const given = splits.filter(({ fromId, preparationId }) => fromId === householdId && preparationId === product.id)
  const left = held - given.reduce((sum, { jars }) => sum + jars, 0)
  if (held === 0 || others.length === 0) return null
  const noun = productNoun(product.recipe.title)
  return (
    <Sheet
      lid={given.length > 0 ? 'domed' : 'flat'}
      lidWords={given.length > 0 ? 'Not answered yet' : 'If you like'}
      title={`Split ${noun} with another household`}
    >
      {given.map((split) => (
        <CommandForm
          key={split.id}
          command="withdraw-split"
          groupId={groupId}
          formKey={freshKey()}
          next={next}
          fixed={{ splitId: split.id, householdId }}
        >
          <p>
            <b>
              {split.jars} {jarName(product.jarSize, split.jars)}
            </b>{' '}
            are offered to {split.toName}, who has not answered yet.
          </p>
          <SubmitButton kind="plain" sending="Sending">
            Take the offer to {split.toName} back
          </SubmitButton>
        </CommandForm>
      ))}
      {left > 0 && (
        <Fold summary="Offer a part of the claim">
          <CommandForm
            command="offer-split"
            groupId={groupId}
            formKey={freshKey()}
            next={next}
            fixed={{ preparationId: product.id, householdId }}
            className="form"
          >
            <SelectEntry
              name="toHouseholdId"
              label="To which household?"
              required
              ask="Choose one"
              options={others.map(({ id, name }) => ({ value: id, label: name }))}
            />
            <StepperEntry
              name="jars"
              label="How many?"
              unit={`${jarName(product.jarSize, 2)} of ${noun}, to offer`}
              one="jar to offer"
              min={1}
              max={left}
              first={1}
            />
            <SubmitButton kind="plain" sending="Sending">
              Offer them
            </SubmitButton>
          </CommandForm>
        </Fold>
      )}
    </Sheet>
  )
}
