/** How a jar that stands for a measure is drawn. */
export type MeasureLevel = {
  /** Part of the jar that is filled, 0 to 1. */
  readonly filled: number
  /** What is left over, in the measure's own unit; negative when more is needed than there is. */
  readonly spare: number
  /** More is needed than there is: the water stands over the brim. */
  readonly over: boolean
  /** Nothing or next to nothing is left: a twentieth of what there is, or less. */
  readonly tight: boolean
}

/**
 * Level of a jar whose contents are what is needed and whose size is what there is, both at least 0 and in one unit.
 *
 * With nothing there, anything needed is over the brim and nothing needed is an empty jar.
 */
export function measureLevel(needed: number, available: number): MeasureLevel {
  const spare = available - needed
  const over = spare < 0
  const filled = available === 0 ? Number(needed > 0) : Math.min(1, needed / available)
  return { filled, spare, over, tight: !over && available > 0 && spare * 20 <= available }
}
