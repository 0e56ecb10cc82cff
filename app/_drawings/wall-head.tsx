import type { ReactNode } from 'react'

type WallHeadProps = {
  title: ReactNode
  lead?: ReactNode
  clock?: ReactNode
  /** "26 August 2027, 16:10": paper shows when it was printed in place of a clock. */
  printedAt?: string
}

/** The one sentence over a timetable, what it rests on, and the time. */
export function WallHead({ title, lead, clock, printedAt }: WallHeadProps) {
  return (
    <header className="wall-head">
      <div>
        <h1>{title}</h1>
        {lead && <p>{lead}</p>}
      </div>
      {clock && <p className="wall-clock">{clock}</p>}
      {printedAt && <p className="paper-only">Printed {printedAt}</p>}
    </header>
  )
}
