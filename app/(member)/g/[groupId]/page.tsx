import Link from 'next/link'
import { LinkButton } from '@/app/_ui/link-button'
import { Page } from '@/app/_ui/page'
import { PageHead } from '@/app/_ui/page-head'
import { Sheet } from '@/app/_ui/sheet'
import { requireActor } from '@/lib/auth/current-actor'
import { groupHead } from '@/lib/queries/group-head'
import { groupHome } from '@/lib/queries/group-home'
import { may } from '@/shared/access/policy'
import { type Want, whatWantsYou } from '@/shared/group/what-wants-you'
import { DayList } from './day-list'
import { GroupFacts } from './group-facts'

const OVER = new Set(['closed', 'cancelled'])

/** The group's first page: what wants you, the next days, and what there is. */
export default async function GroupPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-group')
  const head = await groupHead(groupId)
  const home = await groupHome(actor, head.timeZone, new Date())
  const wants = whatWantsYou(actor, home.facts)
  const next = home.days.filter(({ state }) => !OVER.has(state)).reverse()
  const over = home.days.filter(({ state }) => OVER.has(state))
  return (
    <Page>
      <PageHead
        kicker={head.name}
        title={wants.length === 0 ? 'Nothing wants you now' : `${wants.length} ${wants.length === 1 ? 'thing wants' : 'things want'} you`}
        action={may(actor, 'edit-day') && <LinkButton href={`/g/${groupId}/days/new`}>New day</LinkButton>}
      />
      <div className="two wide-first">
        <div className="stack">
          {wants.length > 0 && <Wants groupId={groupId} wants={wants} />}
          <DayList actor={actor} title="Open days" days={next} />
          {over.length > 0 && <DayList actor={actor} title="Earlier days" days={over} />}
        </div>
        <div>
          <GroupFacts actor={actor} head={head} home={home} />
        </div>
      </div>
    </Page>
  )
}

function Wants({ groupId, wants }: { groupId: string; wants: readonly Want[] }) {
  return (
    <Sheet lid="domed" title="What wants you">
      <ul className="list">
        {wants.map(({ text, path }) => (
          <li key={path + text}>
            <Link className="way" href={`/g/${groupId}${path}`} prefetch={false}>
              {text}
            </Link>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
