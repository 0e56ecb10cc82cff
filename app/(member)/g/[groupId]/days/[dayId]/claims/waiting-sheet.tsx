import { CommandForm } from '@/app/_forms/command-form'
import { RadioEntry } from '@/app/_forms/entries'
import { Fold } from '@/app/_ui/fold'
import { Sheet } from '@/app/_ui/sheet'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { ClaimRoom } from '@/lib/queries/claim-room'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import { productNoun } from '@/shared/day/product-name'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayMoment } from '@/shared/time/say-moment'
import { StepperEntry } from '../_floor/stepper-entry'

type Props = {
  groupId: string
  product: OfferedProduct
  room: ClaimRoom
  householdId: string
  isOwn: boolean
  next: string
}

/** The waiting list of one product as one household sees it: its place, and more jars to wait for. Nothing while jars are free and nobody waits. */
export function WaitingSheet({ groupId, product, room, householdId, isOwn, next }: Props) {
  const list = room.waiting.filter(({ preparationId }) => preparationId === product.id)
  const place = list.findIndex((each) => each.householdId === householdId)
  const wish = list[place]
  const moved = room.moves.filter((move) => move.preparationId === product.id && move.householdId === householdId)
  const free = product.offered - product.claimed
  if (free > 0 && list.length === 0) return null
  const noun = productNoun(product.recipe.title)
  const jars = (count: number) => `${count} ${jarName(product.jarSize, count)}`
  const [who, wait] = isOwn ? ['You', 'wait'] : ['They', 'wait']
  return (
    <Sheet lid={wish ? 'domed' : 'flat'} lidWords={wish ? 'Waiting' : 'For those who would like more'} title={`Waiting list for ${noun}`}>
      {wish ? (
        <p>
          {who} {wait} for <b>{jars(wish.jars)}</b> more, in place <b className="num">{place + 1}</b> of {list.length}.{' '}
          {wish.takesFewer ? 'What comes free is given at once, also a part.' : 'All of them or none.'}
        </p>
      ) : (
        <p>
          {free > 0 ? `${jars(free)} are free.` : 'All are asked for.'} {sayList(list.length)} Jars that others give up go to the list in
          its order, at once.
        </p>
      )}
      {moved.map((move) => (
        <p key={`${move.at}-${move.jars}`}>
          <b>{move.jars} came from the list</b> {sayMoment(move.at)}.
        </p>
      ))}
      <WishForm {...{ groupId, product, householdId, next, noun }} first={wish?.jars ?? 1} takesFewer={wish?.takesFewer ?? true} />
      {wish && (
        <CommandForm
          command="wait-for-jars"
          groupId={groupId}
          formKey={freshKey()}
          next={next}
          fixed={{ preparationId: product.id, householdId, jars: 0 }}
        >
          <SubmitButton kind="plain" sending="Sending">
            Leave the list
          </SubmitButton>
        </CommandForm>
      )}
    </Sheet>
  )
}

const sayList = (waiting: number): string =>
  waiting === 0 ? 'Nobody waits yet.' : waiting === 1 ? 'One household waits.' : `${waiting} households wait.`

type WishProps = Pick<Props, 'groupId' | 'product' | 'householdId' | 'next'> & { noun: string; first: number; takesFewer: boolean }

function WishForm({ groupId, product, householdId, next, noun, first, takesFewer }: WishProps) {
  const choices = [
    { value: 'yes', label: 'At most so many: fewer are better than none' },
    { value: 'no', label: 'All of them or none' },
  ]
  return (
    <Fold summary="Wait for more jars">
      <CommandForm
        command="wait-for-jars"
        groupId={groupId}
        formKey={freshKey()}
        next={next}
        fixed={{ preparationId: product.id, householdId }}
        className="form"
      >
        <StepperEntry
          name="jars"
          label="How many more?"
          unit={`more ${jarName(product.jarSize, 2)} of ${noun}, to wait for`}
          one="jar to wait for"
          min={1}
          max={Math.max(1, Math.min(1000, product.offered))}
          first={first}
        />
        <RadioEntry name="takesFewer" label="If fewer come free" options={choices} first={takesFewer ? 'yes' : 'no'} />
        <SubmitButton kind="plain" sending="Saving">
          Wait for them
        </SubmitButton>
      </CommandForm>
    </Fold>
  )
}
