'use client'

import Link from 'next/link'
import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'

/** One way through the group. The place one is at is underlined and said. */
export function NavLink({ href, exact, children }: { href: string; exact?: boolean; children: ReactNode }) {
  const here = usePathname() ?? ''
  const isHere = here === href || (!exact && here.startsWith(`${href}/`))
  return (
    <Link href={href} prefetch={false} aria-current={isHere ? 'page' : undefined} onClick={foldMenu}>
      {children}
    </Link>
  )
}

/** On a phone the menu lies over the page; it folds away when one of its ways is taken. */
function foldMenu() {
  document.querySelector<HTMLElement>('.ways:popover-open')?.hidePopover()
}
