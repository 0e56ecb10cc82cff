import type { ReactNode } from 'react'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { EmptyState } from '@/app/_ui/empty-state'
import { Sheet } from '@/app/_ui/sheet'
import { freshKey } from '@/lib/http/fresh-key'
import type { ClaimRoom } from '@/lib/queries/claim-room'
import type { ClaimingHousehold, OfferedProduct } from '@/lib/queries/day-claims'
import type { DayForecast } from '@/lib/queries/day-forecast'
import type { DayHead } from '@/lib/queries/day-head'
import { localMomentOf } from '@/lib/time/local-moment'
import { capLimit } from '@/shared/allocation/claim-caps'
import { claimView } from '@/shared/day/claim-view'
import { type ClaimWindow, claimWindow } from '@/shared/day/claim-window'
import { productName, productNoun } from '@/shared/day/product-name'
import { type AvoidedAllergen, whoAvoids } from '@/shared/day/who-avoids'
import { jarName, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { dayShareRule, productRule } from '@/shared/share/day-share-rule'
import { sayMoment } from '@/shared/time/say-moment'
import { sayList } from '@/shared/wording/say-allergen-refusal'
import { sayGiven } from '@/shared/wording/say-share'
import { ClaimForm } from './claim-form'
import { GiveSheet, SplitOffers } from './split-sheets'
import { WaitingSheet } from './waiting-sheet'

type Props = {
  groupId: string
  day: DayHead
  products: readonly OfferedProduct[]
  forecast: DayForecast
  room: ClaimRoom
  household: ClaimingHousehold
  /** Households that a part of a claim may be offered to. */
  others: readonly { id: string; name: string }[]
  organiser: string | null
  isOwn: boolean
  /** What each household gives, where the rule shares by it. */
  given: ReadonlyMap<string, number>
}

/** Where this household stands in the window for asking now. */
export const windowOf = (day: DayHead, room: ClaimRoom, householdId: string): ClaimWindow =>
  claimWindow(day, new Date(), room.headStart.has(householdId))

/** One sheet a product: what may be asked for first, what is not for this household after it. */
export function ClaimSheets(props: Props) {
  const { groupId, day, products, room, household, organiser, isOwn } = props
  const judged = products.map((product) => ({ product, avoided: whoAvoids(product.recipe.allergens, household) }))
  const open = judged.filter(({ avoided }) => avoided.length === 0).map(({ product }) => product)
  const closed = judged.filter(({ avoided }) => avoided.length > 0)
  const window = windowOf(day, room, household.id)
  const more = open[0] && window.kind === 'open' ? productNoun(open[0].recipe.title) : undefined
  const refusals = closed.map(({ product, avoided }) => (
    <NotForYou
      key={product.id}
      {...{ product, avoided, organiser, more }}
      householdPath={`/g/${groupId}/households/${household.id}`}
      isOwn={isOwn}
    />
  ))
  if (products.length === 0) return <EmptyState text="No recipe yet. As soon as one is chosen you can say how many jars you would like." />
  const next = `/g/${groupId}/days/${day.id}/claims${isOwn ? '' : `?household=${household.id}`}`
  const address = { groupId, householdId: household.id, next }
  const offers = <SplitOffers {...address} splits={room.splits} products={products} />
  const gives = open.map((product) => (
    <GiveSheet
      key={`give-${product.id}`}
      {...{ ...address, product, splits: room.splits, others: props.others.filter(({ id }) => id !== household.id) }}
    />
  ))
  const maySplit = day.state === 'claiming' || day.state === 'planned'
  if (window.kind !== 'open')
    return (
      <>
        {maySplit && offers}
        <NotAsking {...{ groupId, day, window, open, household, refusals }} />
        {maySplit && gives}
      </>
    )
  return (
    <>
      {offers}
      <OpenForms {...props} open={open} refusals={refusals} next={next} />
      {open.map((product) => (
        <WaitingSheet key={`wait-${product.id}`} {...{ ...address, product, room, isOwn }} />
      ))}
      {gives}
    </>
  )
}

type OpenProps = Props & { open: readonly OfferedProduct[]; refusals: readonly ReactNode[]; next: string }

function OpenForms(props: OpenProps) {
  const { groupId, day, open, refusals, forecast, room, household, isOwn, next } = props
  const until = day.claimsCloseLocal
    ? `Change it until ${sayMoment(day.claimsCloseLocal)}.`
    : 'Change it until the organiser closes the claims.'
  const rule = dayShareRule(day.shareRule, day.id)
  const given = sayGiven(rule, props.given.get(household.id) ?? 0, isOwn)
  const ruleOf = ({ recipe, jarSize }: OfferedProduct) => productRule(rule, { recipeId: recipe.id, jarSize })
  const caps = capsOf(day, open, room, household.id)
  return open.map((product, place) => {
    const expected = forecast.get(product.id)
    if (!expected) throw new Error(`no forecast for preparation ${product.id}`)
    const cap = caps.get(product.id)
    return (
      <ClaimForm
        // A saved claim comes back with the page: the form then starts from it.
        key={`${product.id}-${household.id}`}
        until={place === open.length - 1 ? until : null}
        {...{ groupId, householdId: household.id, preparationId: product.id, next }}
        formKey={freshKey()}
        title={productName(product.recipe.title)}
        jar={`${jarNameWithVolume(product.jarSize)}${product.process ? '' : ', fridge or freezer'}`}
        jarSize={product.jarSize}
        unit={`${jarName(product.jarSize, 2)} of ${productNoun(product.recipe.title)}`}
        what={`jars of ${productNoun(product.recipe.title)}`}
        produce={product.recipe.pattern}
        gets={isOwn ? 'you get' : 'they get'}
        cap={cap?.words}
        given={given}
        view={claimView(product, expected, household, ruleOf(product), cap?.most ?? null, props.given)}
        inBar={open.length === 1}
      >
        {place === open.length - 1 && refusals}
      </ClaimForm>
    )
  })
}

/** What the caps leave this household of each product, without what it waits for, and how that is said. */
function capsOf(day: DayHead, products: readonly OfferedProduct[], room: ClaimRoom, householdId: string) {
  const waits = (id: string) => room.waiting.find((each) => each.preparationId === id && each.householdId === householdId)?.jars ?? 0
  const asked = (product: OfferedProduct) => (product.claims.get(householdId) ?? 0) + waits(product.id)
  return new Map(
    products.flatMap((product) => {
      const elsewhere = products.filter(({ id }) => id !== product.id).reduce((sum, each) => sum + asked(each), 0)
      const ofOffer = room.caps.get(product.id) ?? null
      const limit = capLimit({ ofOffer, ofDay: day.householdCap }, elsewhere)
      const said = [
        ...(ofOffer === null ? [] : [`at most ${ofOffer} of this`]),
        ...(day.householdCap === null ? [] : [`at most ${day.householdCap} jars in all on this day`]),
      ]
      const words = `Each household: ${said.join(', ')}.`
      return limit ? [[product.id, { most: Math.max(0, limit.most - waits(product.id)), words }] as const] : []
    }),
  )
}

type NotForYouProps = {
  product: OfferedProduct
  avoided: readonly AvoidedAllergen[]
  organiser: string | null
  more?: string
  householdPath: string
  isOwn: boolean
}

function NotForYou({ product, avoided, organiser, more, householdPath, isOwn }: NotForYouProps) {
  const allergens = avoided.map(({ allergen }) => allergen).join(', ')
  return (
    <Sheet
      lid="sunk"
      mark={<TradeSymbol name="refused" height={40} />}
      title={`${productName(product.recipe.title)}: not for ${isOwn ? 'you' : 'them'}`}
    >
      <p className="why">
        They contain <b>{allergens}</b>. {avoided.map((each) => (isOwn ? sayList(each) : sayList(each).replace('your', 'their'))).join(' ')}
      </p>
      <p>
        <b>Instead:</b> {more && `ask for more ${more}, or `}
        <a href={householdPath}>{isOwn ? `tell ${organiser ?? 'the organiser'} the list is wrong` : 'correct the list'}</a>.
      </p>
    </Sheet>
  )
}

type NotAskingProps = {
  groupId: string
  day: DayHead
  window: Exclude<ClaimWindow, { kind: 'open' }>
  open: readonly OfferedProduct[]
  household: ClaimingHousehold
  refusals: readonly ReactNode[]
}

const WHY: Readonly<Record<'draft' | 'over', string>> = {
  draft: 'Nobody can ask yet: the day is a draft.',
  over: 'The time for asking is over.',
}

function NotAsking({ groupId, day, window, open, household, refusals }: NotAskingProps) {
  const isOver = window.kind === 'over'
  return (
    <>
      <Sheet lid={isOver ? 'sunk' : 'flat'} title={isOver ? 'You asked for' : 'Not open yet'}>
        <ul className="list">
          {open.map((product) => {
            const jars = isOver ? (product.claims.get(household.id) ?? 0) : product.offered
            return (
              <li key={product.id}>
                <b className="num">{jars}</b> {jarName(product.jarSize, jars)} of {productNoun(product.recipe.title)}
                {!isOver && ' on offer'}
              </li>
            )
          })}
        </ul>
        {window.kind === 'not-yet' ? (
          <>
            <p>
              You can ask from <b>{sayMoment(localMomentOf(window.from, day.timeZone))}</b> on.
            </p>
            {day.earlyMinutes > 0 && (
              <p className="quiet">
                Who promises produce or hours may ask {day.earlyMinutes / 60} h before the others.{' '}
                <a href={`/g/${groupId}/days/${day.id}/pledges`}>Promise something</a>
              </p>
            )}
          </>
        ) : (
          <p className="quiet">{WHY[window.kind]}</p>
        )}
      </Sheet>
      {refusals}
    </>
  )
}
