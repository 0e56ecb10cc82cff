import type { Metadata } from 'next'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { requireActor } from '@/lib/auth/current-actor'
import { dayProducts, type OfferedProduct } from '@/lib/queries/day-claims'
import { requireDayHead } from '@/lib/queries/day-head'
import { dayPledges, pledgePeople } from '@/lib/queries/day-pledges'
import { may, reachOf } from '@/shared/access/policy'
import { isPledgeKind } from '@/shared/forms/pledge'
import { productName } from '@/shared/day/product-name'
import { COMMON_POOL, type PooledProduct } from '@/shared/share/pool-products'
import { sayDate } from '@/shared/time/calendar-date'
import { DayPlace } from '../_overview/day-place'
import { HomeTasks } from './home-tasks'
import { PledgeForm } from './pledge-form'
import { PledgeList } from './pledge-list'

export const metadata: Metadata = { title: 'Promises' }

type Props = {
  params: Promise<{ groupId: string; dayId: string }>
  searchParams: Promise<{ kind?: string | string[]; item?: string | string[] }>
}

/** What households bring, pay, do at home and give in hours. Everybody sees their own; organiser and station leads see all. */
export default async function PledgesPage({ params, searchParams }: Props) {
  const { groupId, dayId } = await params
  const actor = await requireActor(groupId, 'see-pledges')
  const household = reachOf(actor, 'see-pledges') === 'any' ? undefined : actor.householdId
  const promiser = reachOf(actor, 'pledge') === 'any' ? undefined : actor.householdId
  const [day, products, pledges, households] = await Promise.all([
    requireDayHead(groupId, dayId),
    dayProducts(groupId, dayId),
    dayPledges(groupId, dayId, household),
    pledgePeople(groupId, promiser),
  ])
  const { kind, item } = await searchParams
  const isOpen = day.state === 'draft' || day.state === 'claiming' || day.state === 'planned' || day.state === 'running'
  const mayPromise = isOpen && may(actor, 'pledge', actor.householdId)
  return (
    <Page>
      <PageHead
        kicker={<DayPlace groupId={groupId} dayId={dayId} name={day.name} after={sayDate(day.date)} />}
        title="What is promised"
        lead="Produce, jars, money, hours, and what is done at home the evening before."
      />
      <HomeTasks products={products} pledges={pledges} seesAll={household === undefined} mayPromise={mayPromise} />
      <PledgeList {...{ groupId, actor, day, pledges }} products={products.map(pooled)} />
      {mayPromise && (
        <PledgeForm
          {...{ groupId, day, households }}
          own={actor.householdId}
          kind={typeof kind === 'string' && isPledgeKind(kind) ? kind : 'produce'}
          item={typeof item === 'string' ? item.slice(0, 80) : undefined}
          pools={may(actor, 'edit-reckoning') ? poolsOf(products) : null}
        />
      )}
    </Page>
  )
}

const pooled = ({ id, letter, recipe }: OfferedProduct): PooledProduct => ({ id, letter, recipeId: recipe.id, title: recipe.title })

/** The same choice as for a receipt: every jar of the day, or the jars of one recipe. */
const poolsOf = (products: readonly OfferedProduct[]) => [
  { value: COMMON_POOL, label: 'every jar of the day' },
  ...[...new Map(products.map(({ recipe }) => [recipe.id, recipe.title]))].map(([value, title]) => ({
    value,
    label: `jars of ${productName(title).toLowerCase()}`,
  })),
]
