import type { ReactNode } from 'react'
import { Source } from '@/app/_ui/source'

type FigureProps = {
  label?: ReactNode
  value: ReactNode
  /** "of 430" between number and unit, where there is a whole. */
  of?: ReactNode
  /** Never left out: "min", "jars", "pints". */
  unit: ReactNode
  source?: ReactNode
  large?: boolean
}

/** A number with its unit and, where it comes from the world, its source. */
export function Figure({ label, value, of, unit, source, large }: FigureProps) {
  return (
    <div className={large ? 'figure large' : 'figure'}>
      {label && <span className="figure-label">{label}</span>}
      <p>
        <span className="num">{value}</span> {of !== undefined && <>of {of} </>}
        {unit}
      </p>
      {source && <Source>{source}</Source>}
    </div>
  )
}
