import Link from 'next/link'
import type { ReactNode } from 'react'
import { NavLink } from '@/app/_shell/nav-link'
import { ThemeToggle } from '@/app/_shell/theme-toggle'

/** One line of the menu; `exact` for a place that lies above the others. */
export type Way = { href: string; label: string; exact?: boolean }

type TopBarProps = {
  /** Where the name of the product leads. */
  home: string
  /** The group one is in. */
  place?: string
  ways?: readonly Way[]
  /** Who is signed in. */
  person?: string
  /** The sign-out form, or a link to sign in. */
  session?: ReactNode
}

/** The line above every page: the name, the group, the ways through it. On a phone the ways fold behind "Menu". */
export function TopBar({ home, place, ways = [], person, session }: TopBarProps) {
  return (
    <header className="topbar">
      <div className="topbar-in">
        <Link className="wordmark" href={home} prefetch={false}>
          <svg viewBox="0 0 132 18" width="66" height="9" aria-hidden="true">
            <path d="M0 3H20C46 3 44 15 66 15S86 3 112 3H132" />
          </svg>
          Lidsong
        </Link>
        {place && <span className="topbar-place">{place}</span>}
        <button className="topbar-menu" type="button" popoverTarget="ways">
          Menu
        </button>
        <nav className="ways" id="ways" popover="auto" aria-label="Main">
          <button className="topbar-menu" type="button" popoverTarget="ways" popoverTargetAction="hide">
            Close
          </button>
          <div className="ways-person">
            {person && <span>{person}</span>}
            <ThemeToggle />
            {session}
          </div>
          {ways.length > 0 && (
            <ul>
              {ways.map((way) => (
                <li key={way.href}>
                  <NavLink href={way.href} exact={way.exact}>
                    {way.label}
                  </NavLink>
                </li>
              ))}
            </ul>
          )}
        </nav>
      </div>
    </header>
  )
}
