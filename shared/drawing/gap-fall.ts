/** One moment of a search: seconds since its start, and the finish found then in kitchen minutes. */
export type FoundFinish = readonly [seconds: number, finishAt: number]

export type GapFall = {
  /** The finish as a line that falls over weirs, from the first plan found to now. */
  readonly line: string
  /** The water between that line and the bound: what could still be gained at most. */
  readonly water: string
  /** Height of the bound. */
  readonly floor: number
  /** Height of a finish. */
  readonly yOf: (finishAt: number) => number
}

const CORNER = 5

/**
 * The falling finish of a search as paths in a box: time to the right, the earliest finish that is possible at the bottom.
 *
 * @param trail - at least one moment, each finish earlier than the one before
 * @param bound - kitchen minutes before which no plan can end
 * @param seconds - how long the search has run; the line goes on level to there
 */
export function gapFall(
  trail: readonly FoundFinish[],
  bound: number,
  seconds: number,
  { width, height }: { readonly width: number; readonly height: number },
): GapFall {
  const first = trail[0]
  if (!first) return { line: '', water: '', floor: height, yOf: () => height }
  const [from, highest] = first
  const span = Math.max(1, seconds - from, (trail.at(-1)?.[0] ?? 0) - from)
  const drop = Math.max(1, highest - bound)
  const xOf = (at: number) => round(((at - from) / span) * width)
  const yOf = (finishAt: number) => round(((highest - finishAt) / drop) * height)
  let level = 0
  const falls = trail.slice(1).map(([at, finishAt]) => {
    const step = fall(xOf(at), level, yOf(finishAt))
    level = yOf(finishAt)
    return step
  })
  const line = `M0 0${falls.join('')}H${width}`
  return { line, water: `${line}V${height}H0Z`, floor: height, yOf }
}

/** Level to the weir, round its edge, and down. */
function fall(x: number, from: number, to: number): string {
  const corner = Math.min(CORNER, x, to - from)
  return `H${round(x - corner)}Q${x} ${from} ${x} ${round(from + corner)}V${to}`
}

const round = (value: number): number => Math.round(value * 10) / 10
