import { stillHere } from '@/shared/people/still-here'
import { CommandForm } from '@/app/_forms/command-form'
import { Fold } from '@/app/_ui/fold'
import { SubmitButton } from '@/app/_ui/submit-button'
import { freshKey } from '@/lib/http/fresh-key'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { formatMoney, plainMoney } from '@/shared/reckoning/money'
import type { ShoppingItem, ShoppingPage } from '@/shared/supplies/day-list'
import { sayNumber } from '@/shared/units/say-kitchen-amount'
import { loosePack, sayAmount, sayFor, sayPacks, sayReckoning } from '@/shared/wording/say-shopping'
import { BoughtRows } from './bought-rows'
import { ErrandForm } from './errand-form'
import { PackForms } from './pack-forms'
import { TickForm } from './tick-form'

interface ListLineProps {
  readonly item: ShoppingItem
  readonly page: ShoppingPage
  readonly groupId: string
  readonly dayId: string
  readonly actor: Actor
  readonly isOpen: boolean
}

/** One thing: what to take off the shelf first, then where the number comes from. */
export function ListLine({ item, page, groupId, dayId, actor, isOpen }: ListLineProps) {
  const { key, unit, missing, plan, products, over, leftOut, notCounted, printed, isOptional } = item
  const { currency } = page.day
  const next = `/g/${groupId}/days/${dayId}/shopping`
  const price = plan.choice?.price ?? null
  const isLeft = over + (plan.choice?.over ?? 0)
  const mayBuy = isOpen && may(actor, 'buy-item')
  return (
    <li className="errand">
      <div className="thing-head">
        <h3>{key.charAt(0).toUpperCase() + key.slice(1)}</h3>
        {missing > 0 && (
          <p className="num take">
            <span className="tick-box" aria-hidden="true" />
            {plan.choice ? sayPacks(plan.choice) : sayAmount(missing, unit)}
          </p>
        )}
      </div>
      {missing > 0 && (products.length > 0 || price !== null) && (
        <p>
          {[plan.choice && products.length > 0 && sayAmount(missing, unit), sayFor(products)].filter(Boolean).join(' ')}
          {price !== null && `${products.length > 0 ? ', about' : 'About'} ${formatMoney(price, currency)}`}
          {isOptional && ', if you like'}
        </p>
      )}
      {hasMoreToSay(item) && (
        <p className="quiet">
          {sayReckoning(item)}
          {leftOut > 0 && `, ${leftOut} more not usable`}
          {isLeft > 0 && `. ${sayNumber(isLeft)} will be over`}.
        </p>
      )}
      {notCounted.length > 0 && <p className="quiet">Not counted, because it is told in another measure: {notCounted.join(', ')}.</p>}
      {printed.map((words) => (
        <p key={words} className="src">
          {words}
        </p>
      ))}
      <BoughtRows
        groupId={groupId}
        dayId={dayId}
        item={key}
        next={next}
        rows={item.bought.map((row) => ({
          id: row.id,
          said: `${sayNumber(row.packs)} × ${row.pack}, ${formatMoney(row.costMinor, currency)}, ${nameOf(page, row.householdId)}`,
          formKey: freshKey(),
          mayTakeBack: isOpen && may(actor, 'buy-item', row.householdId),
        }))}
      />
      {item.maybe.map((row) => (
        <CommandForm
          key={row.id}
          command="cover-item"
          groupId={groupId}
          formKey={freshKey()}
          next={next}
          fixed={{ dayId, purchaseId: row.id, item: key, covers: missing, unit }}
          className="row apart"
        >
          <span>
            A receipt is in: {sayNumber(row.packs)} × {row.pack}, {formatMoney(row.costMinor, currency)}.
          </span>
          {isOpen && may(actor, 'edit-shopping') && (
            <SubmitButton small kind="plain" sending="Saving">
              It covers this<span className="unseen">: {key}</span>
            </SubmitButton>
          )}
        </CommandForm>
      ))}
      {mayBuy && missing > 0 && <Ticks item={item} page={page} groupId={groupId} dayId={dayId} actor={actor} next={next} />}
      {isOpen && missing > 0 && (
        <Fold summary="Who buys it, and how it is sold">
          <ErrandForm item={item} page={page} groupId={groupId} dayId={dayId} actor={actor} />
          <PackForms item={item} page={page} groupId={groupId} dayId={dayId} edits={may(actor, 'edit-shopping')} />
        </Fold>
      )}
    </li>
  )
}

/** Where the amount to buy is simply what the recipes take, it is said once. */
const hasMoreToSay = ({ needed, missing, leftOut, over, onTop, plan }: ShoppingItem) =>
  needed !== missing || leftOut + over + onTop > 0 || (plan.choice?.over ?? 0) > 0

const nameOf = ({ households }: ShoppingPage, id: string) => households.find((household) => household.id === id)?.name ?? ''

type TicksProps = Omit<ListLineProps, 'isOpen'> & { readonly next: string }

/** One button for each pack to take; loose by its own unit where nobody has said how it is sold. */
function Ticks({ item, page, groupId, dayId, actor, next }: TicksProps) {
  const { currency } = page.day
  const buysForAll = may(actor, 'edit-shopping')
  const everybody = stillHere(page.households).map(({ id, name }) => ({ value: id, label: name }))
  const buyer = everybody.find(({ value }) => value === item.buyer?.id)
  const loose = loosePack(item)
  const takes = item.plan.choice?.packs.map(({ pack, packs }) => ({ ...pack, packs })) ?? [
    { id: 'loose', ...loose, holds: 1, unit: item.unit, price: null },
  ]
  return takes.map(({ id, label, packs, holds, unit, price }) => {
    const formKey = freshKey()
    return (
      <TickForm
        key={id}
        {...{ groupId, dayId, next, formKey, packs, holds, unit, currency }}
        item={item.key}
        purchaseId={freshKey()}
        pack={label || id}
        cost={price === null ? '' : plainMoney(price * packs, currency)}
        pool={item.pool}
        householdId={buysForAll ? (buyer?.value ?? actor.householdId) : actor.householdId}
        households={buysForAll ? everybody : []}
      />
    )
  })
}
