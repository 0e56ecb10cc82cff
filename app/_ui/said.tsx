import type { ReactNode } from 'react'

/** What has just been done and kept. It stays on the page; it does not fade away. */
export function Said({ children }: { children?: ReactNode }) {
  return <div role="status">{children && <p className="said">{children}</p>}</div>
}
