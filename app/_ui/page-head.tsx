import type { ReactNode } from 'react'

/** A page's name: where we are above it, what it comes to below it, and at most one thing to do beside it. */
export function PageHead({ kicker, title, lead, action }: { kicker?: ReactNode; title: ReactNode; lead?: ReactNode; action?: ReactNode }) {
  return (
    <header className="page-head">
      <div className="page-head-words">
        {kicker && <p className="quiet">{kicker}</p>}
        <h1>{title}</h1>
        {lead && <p className="lead">{lead}</p>}
      </div>
      {action}
    </header>
  )
}
