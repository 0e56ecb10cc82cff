import type { ReactNode } from 'react'
import { TradeSymbol } from '@/app/_drawings/trade-symbol'
import { EmptyState } from '@/app/_ui/empty-state'
import { Sheet } from '@/app/_ui/sheet'
import { freshKey } from '@/lib/http/fresh-key'
import type { ClaimingHousehold, OfferedProduct } from '@/lib/queries/day-claims'
import type { DayHead } from '@/lib/queries/day-head'
import { claimView } from '@/shared/day/claim-view'
import { productName, productNoun } from '@/shared/day/product-name'
import { type AvoidedAllergen, whoAvoids } from '@/shared/day/who-avoids'
import { jarName, jarNameWithVolume } from '@/shared/kitchen/jar-sizes'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { sayMoment } from '@/shared/time/say-moment'
import { sayList } from '@/shared/wording/say-allergen-refusal'
import { ClaimForm } from './claim-form'

type Props = {
  groupId: string
  day: DayHead
  products: readonly OfferedProduct[]
  household: ClaimingHousehold
  organiser: string | null
  isOwn: boolean
}

/** Nobody may ask for jars of this day now. */
export const areClaimsOver = ({ state, claimsCloseAt }: DayHead): boolean =>
  state !== 'claiming' || (claimsCloseAt !== null && claimsCloseAt < new Date())

/** One sheet a product: what may be asked for first, what is not for this household after it. */
export function ClaimSheets({ groupId, day, products, household, organiser, isOwn }: Props) {
  const judged = products.map((product) => ({ product, avoided: whoAvoids(product.recipe.allergens, household) }))
  const open = judged.filter(({ avoided }) => avoided.length === 0).map(({ product }) => product)
  const closed = judged.filter(({ avoided }) => avoided.length > 0)
  const isOver = areClaimsOver(day)
  const more = open[0] && !isOver ? productNoun(open[0].recipe.title) : undefined
  const refusals = closed.map(({ product, avoided }) => (
    <NotForYou
      key={product.id}
      {...{ product, avoided, organiser, more }}
      householdPath={`/g/${groupId}/households/${household.id}`}
      isOwn={isOwn}
    />
  ))
  if (products.length === 0) return <EmptyState text="No recipe yet. As soon as one is chosen you can say how many jars you would like." />
  if (isOver) return <ClaimsClosed {...{ day, open, household, refusals }} />

  const until = day.claimsCloseLocal
    ? `Change it until ${sayMoment(day.claimsCloseLocal)}.`
    : 'Change it until the organiser closes the claims.'
  const rule = dayShareRule(day.shareRule)
  return open.map((product, place) => (
    <ClaimForm
      // A saved claim comes back with the page: the form then starts from it.
      key={`${product.id}-${household.id}`}
      until={place === open.length - 1 ? until : null}
      {...{ groupId, householdId: household.id, preparationId: product.id }}
      formKey={freshKey()}
      next={`/g/${groupId}/days/${day.id}/claims${isOwn ? '' : `?household=${household.id}`}`}
      title={productName(product.recipe.title)}
      jar={jarNameWithVolume(product.jarSize)}
      unit={`${jarName(product.jarSize, 2)} of ${productNoun(product.recipe.title)}`}
      what={`jars of ${productNoun(product.recipe.title)}`}
      produce={product.recipe.pattern}
      gets={isOwn ? 'you get' : 'they get'}
      view={claimView(product, yieldInJars(product.recipe, product.jarSize), household, rule)}
      inBar={open.length === 1}
    >
      {place === open.length - 1 && refusals}
    </ClaimForm>
  ))
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

type ClosedProps = { day: DayHead; open: readonly OfferedProduct[]; household: ClaimingHousehold; refusals: ReactNode }

function ClaimsClosed({ day, open, household, refusals }: ClosedProps) {
  const why = day.state === 'draft' ? 'Nobody can ask yet: the day is a draft.' : 'The time for asking is over.'
  return (
    <>
      <Sheet lid={day.state === 'draft' ? 'flat' : 'sunk'} title={day.state === 'draft' ? 'Not open yet' : 'You asked for'}>
        <ul className="list">
          {open.map((product) => {
            const jars = product.claims.get(household.id) ?? 0
            return (
              <li key={product.id}>
                <b className="num">{jars}</b> {jarName(product.jarSize, jars)} of {productNoun(product.recipe.title)}
              </li>
            )
          })}
        </ul>
        <p className="quiet">{why}</p>
      </Sheet>
      {refusals}
    </>
  )
}
