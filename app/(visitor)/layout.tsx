import Link from 'next/link'
import type { ReactNode } from 'react'
import { Caution } from '@/app/_shell/caution'
import { SessionLinks } from '@/app/_shell/session-links'
import { TopBar } from '@/app/_shell/top-bar'
import { currentUser } from '@/lib/auth/current-actor'

const WAYS = [
  { href: '/', label: 'Start', exact: true },
  { href: '/recipes', label: 'Recipes' },
  { href: '/processes', label: 'Process times' },
]

/** The frame of every page that needs no group. */
export default async function VisitorLayout({ children }: { children: ReactNode }) {
  const user = await currentUser()
  const session = user ? (
    <SessionLinks />
  ) : (
    <Link href="/sign-in" prefetch={false}>
      Sign in
    </Link>
  )
  return (
    <>
      <TopBar home="/" ways={WAYS} person={user?.name} session={session} />
      {children}
      <Caution />
    </>
  )
}
