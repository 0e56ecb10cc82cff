import { type ReactNode, useId } from 'react'
import { measureLevel } from '@/shared/drawing/measure-level'

type MeasureJarProps = {
  label: string
  needed: number
  available: number
  /** "minutes", "jars", "people" */
  unit: string
  /** Said in place of "4 spare", where there is more to say. */
  note?: ReactNode
}

const GLASS = 'M32 7H98M28 16H102V32H28ZM34 32C34 40 18 40 18 54V180Q18 191 30 191H100Q112 191 112 180V54C112 40 96 40 96 32'
const OPEN_GLASS = 'M28 16H102V32H28ZM34 32C34 40 18 40 18 54V180Q18 191 30 191H100Q112 191 112 180V54C112 40 96 40 96 32'
const INSIDE = 'M36 34C36 43 23 43 23 56V178Q23 186 31 186H99Q107 186 107 178V56C107 43 94 43 94 34Z'
const OVERFULL = 'M36 16C44 -6 86 -6 94 16V34C94 42 108 44 108 56V178Q108 186 99 186H31Q22 186 22 178V56C22 44 36 42 36 34Z'

/** A jar as a measure: its level is what is needed, the room at the top is spare, water over the brim is too much. */
export function MeasureJar({ label, needed, available, unit, note }: MeasureJarProps) {
  const level = measureLevel(needed, available)
  const strained = level.over || level.tight
  return (
    <figure className={`measure${level.tight ? ' tight' : ''}${level.over ? ' over' : ''}`}>
      <svg viewBox="8 -4 114 202" width="75" height="132" aria-hidden="true" className={strained ? 'strained' : undefined}>
        {level.over ? <OverTheBrim /> : <Level filled={level.filled} />}
        <path className="glass" d={level.over ? OPEN_GLASS : GLASS} />
      </svg>
      <figcaption>
        <b>{label}</b>
        <span className="num">
          {needed}/{available}
        </span>
        <span>{note ?? spareWords(level.spare, unit)}</span>
      </figcaption>
    </figure>
  )
}

function Level({ filled }: { filled: number }) {
  const clipId = useId()
  const y = 34 + (1 - filled) * 150
  return (
    <>
      <clipPath id={clipId}>
        <path d={INSIDE} />
      </clipPath>
      {filled > 0 && (
        <g clipPath={`url(#${clipId})`}>
          <rect x="20" y={y} width="90" height="180" className="water" />
          <path d={`M20 ${y + 2}H110`} className="waterline" />
        </g>
      )}
    </>
  )
}

function OverTheBrim() {
  return (
    <>
      <path d={OVERFULL} className="water" />
      <path d="M36 16C44 -6 86 -6 94 16" className="brim" />
    </>
  )
}

function spareWords(spare: number, unit: string): string {
  if (spare < 0) return `${unit}; ${-spare} too few`
  return spare === 0 ? `${unit}; none spare` : `${unit}; ${spare} spare`
}
