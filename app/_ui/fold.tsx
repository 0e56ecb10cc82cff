import type { ReactNode } from 'react'

/** Something folded away until it is wanted. Opens without script. */
export function Fold({ summary, open, id, children }: { summary: ReactNode; open?: boolean; id?: string; children: ReactNode }) {
  return (
    <details className="fold" open={open} id={id}>
      <summary>{summary}</summary>
      <div className="fold-in">{children}</div>
    </details>
  )
}
