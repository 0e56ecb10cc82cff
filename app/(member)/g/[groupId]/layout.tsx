import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import { Caution } from '@/app/_shell/caution'
import { SessionLinks } from '@/app/_shell/session-links'
import { TopBar } from '@/app/_shell/top-bar'
import { requireActor } from '@/lib/auth/current-actor'
import { groupHead } from '@/lib/queries/group-head'
import { roleName } from '@/shared/access/actor'
import { waysThrough } from '@/shared/group/ways-through'

interface GroupLayoutProps {
  readonly children: ReactNode
  readonly params: Promise<{ groupId: string }>
}

export async function generateMetadata({ params }: Pick<GroupLayoutProps, 'params'>): Promise<Metadata> {
  const { groupId } = await params
  await requireActor(groupId, 'see-group')
  const { name } = await groupHead(groupId)
  return { title: { default: name, template: `%s · ${name} · Lidsong` } }
}

/** The frame of every page of a group: where one may go is asked of the same table as what one may do. */
export default async function GroupLayout({ children, params }: GroupLayoutProps) {
  const { groupId } = await params
  const actor = await requireActor(groupId, 'see-group')
  const { name } = await groupHead(groupId)
  const ways = waysThrough(actor).map(({ path, ...way }) => ({ ...way, href: `/g/${groupId}${path}` }))
  return (
    <>
      <TopBar
        home="/"
        place={name}
        ways={ways}
        person={`${actor.name}, ${roleName(actor.role).toLowerCase()}`}
        session={<SessionLinks />}
      />
      {children}
      <Caution />
    </>
  )
}
