import type { ReactNode } from 'react'

/** Household phone (one column), desk (1200 in 1280), floor (24 px and up) or wall. */
export type PageSize = 'phone' | 'desk' | 'floor' | 'wall'

/** The one main region of a screen; the skip link leads here. */
export function Page({ size = 'desk', children }: { size?: PageSize; children: ReactNode }) {
  return (
    <main id="main" tabIndex={-1} className={`page ${size}`}>
      {children}
    </main>
  )
}
