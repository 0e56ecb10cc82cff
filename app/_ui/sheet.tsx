import { type ReactNode, useId } from 'react'
import { type Lid, LidLine } from '@/app/_ui/lid-line'

type SheetProps = {
  lid: Lid
  /** What the lid says to somebody who does not see it; by default "Settled", "Wants you" or "Not checked yet". */
  lidWords?: string
  /** Set aside: the lid and the foot are drawn in the colour of a hold. */
  held?: boolean
  /** Just changed: a thick rim, taken away by the page after eight seconds. */
  changed?: boolean
  title?: ReactNode
  /** A drawing in front of the title. */
  mark?: ReactNode
  /** A short remark on the title's line. */
  aside?: ReactNode
  level?: 1 | 2 | 3
  id?: string
  children?: ReactNode
}

/** One sheet of work. It has exactly one lid and never lies inside another sheet. */
export function Sheet({ lid, lidWords, held, changed, title, mark, aside, level = 2, id, children }: SheetProps) {
  const headingId = useId()
  const Heading = `h${level}` as const
  return (
    <section className={`sheet${held ? ' held' : ''}${changed ? ' changed' : ''}`} id={id} aria-labelledby={title ? headingId : undefined}>
      <LidLine lid={lid} words={lidWords} />
      <div className="sheet-in">
        {title && (
          <div className="sheet-head">
            <div className="sheet-mark">
              {mark}
              <Heading id={headingId}>{title}</Heading>
            </div>
            {aside && <p className="quiet">{aside}</p>}
          </div>
        )}
        {children}
      </div>
    </section>
  )
}
