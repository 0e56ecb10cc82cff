'use client'

import Link from 'next/link'
import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'

/** One way through the group. The place one is at is underlined and said. */
export function NavLink({ href, exact, children }: { href: string; exact?: boolean; children: ReactNode }) {
  const here = usePathname() ?? ''
  const isHere = here === href || (!exact && here.startsWith(`${href}/`))
  return (
    <Link href={href} prefetch={false} aria-current={isHere ? 'page' : undefined}>
      {children}
    </Link>
  )
}
