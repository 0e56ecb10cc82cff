import type { ReactNode } from 'react'
import { Glyph } from '@/app/_ui/glyph'

/** The line on top while the wire is cut: what is kept here, and the time. Nothing else on the page is greyed out. */
export function Strip({ children, clock, online }: { children: ReactNode; clock?: string; online?: boolean }) {
  return (
    <div className="strip" role="status">
      <span>
        {!online && <Glyph name="offline" width={34} height={34} />}
        {children}
      </span>
      {clock && <span className="num">{clock}</span>}
    </div>
  )
}
