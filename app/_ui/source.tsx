import type { ReactNode } from 'react'

/** Where a number is from: what it is, for which case, then publication and part. */
export function Source({ what, publication, part, children }: SourceProps) {
  return (
    <p className="src">
      {what && <>{what}: </>}
      {publication && <cite>{publication}</cite>}
      {part && <>, {part}</>}
      {children}
    </p>
  )
}

type SourceProps = { what?: ReactNode; publication?: ReactNode; part?: ReactNode; children?: ReactNode }
