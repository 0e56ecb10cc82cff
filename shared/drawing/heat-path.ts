/** A corner of a heat outline: a minute, and a height from 0 (cold) to 1 (full boil or full pressure). */
export type HeatCorner = { readonly at: number; readonly level: number }

/** Where heat is drawn: `xOf` turns minutes into a length across, `full` is the height of a full boil above `base`. */
export type HeatFrame = { readonly xOf: (at: number) => number; readonly base: number; readonly full: number }

/** The outline of a load as a closed SVG path over its ground line; an empty outline is an empty path. */
export function heatPath(outline: readonly HeatCorner[], { xOf, base, full }: HeatFrame): string {
  const corners = outline.map(({ at, level }) => `${round(xOf(at))} ${round(base - level * full)}`)
  return corners.length === 0 ? '' : `M${corners.join('L')}Z`
}

/** The block of the process in it, full height. */
export const blockPath = (start: number, end: number, { xOf, base, full }: HeatFrame): string =>
  `M${round(xOf(start))} ${base - full}H${round(xOf(end))}V${base}H${round(xOf(start))}Z`

const round = (length: number): number => Math.round(length * 10) / 10
