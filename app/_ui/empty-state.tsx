import type { ReactNode } from 'react'

/** Nothing here yet: the places stand there dashed, with the one thing to do. */
export function EmptyState({ drawing, text, action }: { drawing?: ReactNode; text: ReactNode; action?: ReactNode }) {
  return (
    <div className="empty">
      {drawing}
      <p>{text}</p>
      {action}
    </div>
  )
}
