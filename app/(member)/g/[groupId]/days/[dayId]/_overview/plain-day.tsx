import Link from 'next/link'
import { Facts } from '@/app/_ui/facts'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import type { OfferedProduct } from '@/lib/queries/day-claims'
import type { DayForecast } from '@/lib/queries/day-forecast'
import type { DayHead } from '@/lib/queries/day-head'
import type { Actor } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { productName } from '@/shared/day/product-name'
import { dayStateName } from '@/shared/group/what-wants-you'
import { jarName } from '@/shared/kitchen/jar-sizes'
import { sayDate } from '@/shared/time/calendar-date'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayMoment } from '@/shared/time/say-moment'
import { DayLinks } from './day-links'
import { JarsNow } from './jars-now'

type Props = { actor: Actor; day: DayHead; products: readonly OfferedProduct[]; forecast: DayForecast }

/** The day for everybody but the organiser: when, where, what is made, and what wants this person. */
export function PlainDay({ actor, day, products, forecast }: Props) {
  const path = `/g/${actor.groupId}/days/${day.id}`
  const wants = wantsOf(actor, day, path)
  return (
    <Page size="phone">
      <PageHead kicker={dayStateName(day.state)} title={day.name} lead={`${sayDate(day.date)}, ${day.kitchen.name}`} />
      <Sheet lid={wants.length > 0 ? 'domed' : 'sunk'} title={wants.length > 0 ? 'What you can do' : 'Nothing wants you now'}>
        <ul className="list">
          {wants.map(({ says, href }) => (
            <li key={href}>
              <Link className="way" href={href} prefetch={false}>
                {says}
              </Link>
            </li>
          ))}
        </ul>
      </Sheet>
      <Sheet lid="sunk" title="When">
        <Facts
          facts={[
            { label: 'People arrive', value: formatClock(day.peopleArriveAt) },
            { label: 'First canner load', value: formatClock(day.firstLoadAt) },
            { label: 'Canners empty', value: formatClock(day.cannersEmptyBy) },
            { label: 'Everybody is out', value: formatClock(day.hardEnd) },
            ...(day.claimsCloseLocal ? [{ label: 'Ask for jars until', value: sayMoment(day.claimsCloseLocal) }] : []),
          ]}
        />
      </Sheet>
      <Sheet lid={products.length > 0 ? 'sunk' : 'flat'} title="What is made">
        {products.length === 0 && <p>No recipe is chosen yet.</p>}
        <ul className="list">
          {products.map((product) => (
            <li key={product.id}>
              <b>{productName(product.recipe.title)}</b>, {product.offered} {jarName(product.jarSize, product.offered)} offered
              {product.recipe.allergens.length > 0 && `. Contains ${product.recipe.allergens.join(', ')}`}
            </li>
          ))}
        </ul>
      </Sheet>
      <JarsNow {...{ day, products, forecast }} />
      <DayLinks actor={actor} path={path} state={day.state} />
    </Page>
  )
}

function wantsOf(actor: Actor, { state }: DayHead, path: string): { says: string; href: string }[] {
  const want = (isOpen: boolean, says: string, page: string) => (isOpen ? [{ says, href: `${path}/${page}` }] : [])
  const isPlanned = state === 'planned' || state === 'running'
  return [
    ...want(state === 'running' && may(actor, 'see-floor'), 'What is on now', 'now'),
    ...want(isPlanned && may(actor, 'see-plan'), 'Your own list of work', 'mine'),
    ...want(state === 'claiming' && may(actor, 'claim-jars', actor.householdId), 'Say how many jars you would like', 'claims'),
    ...want(
      (state === 'draft' || state === 'claiming') && may(actor, 'see-pledges'),
      'Promise produce, jars, hours or a task at home',
      'pledges',
    ),
    ...want(isPlanned && may(actor, 'see-plan'), 'The timetable', 'plan'),
    ...want(isPlanned && may(actor, 'see-claims'), 'What you asked for', 'claims'),
    ...want(state === 'resting' && may(actor, 'check-seals'), 'Check the seals', 'seal-check'),
    ...want((state === 'resting' || state === 'closed') && may(actor, 'see-shares'), 'Who gets what', 'shares'),
  ]
}
