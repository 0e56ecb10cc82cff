/** Minutes of one canner load, stage after stage. All whole and at least 0. */
export type LoadStages = {
  readonly loading: number
  readonly comeUp: number
  /** Minutes of steam before the weight goes on; only a pressure canner has them. They lie inside the come-up's slope as a shelf. */
  readonly vent?: number
  readonly process: number
  /** Waiting in the canner after the heat is off; in a pressure canner the pressure falls by itself meanwhile. */
  readonly rest: number
  readonly unloading: number
}

/** Where a heat outline lies: `xOf` turns minutes after the load's start into a length across, heights are measured up from `base`. */
export type HeatFrame = {
  readonly xOf: (minutesAfterStart: number) => number
  readonly base: number
  readonly full: number
  readonly step: number
  readonly half: number
}

/** The outline as two SVG paths: the whole load and its process block, with the block's sides for the figure in it. */
export type HeatOutline = { readonly load: string; readonly block: string; readonly blockFrom: number; readonly blockTo: number }

/**
 * The heat of a load as a line: low step for loading, slope for the come-up, full block for the process, half step for the rest,
 * low step for lifting out. A pressure load has a shelf at two thirds of the slope (venting) and falls by a slope instead of a half step.
 */
export function heatOutline(stages: LoadStages, frame: HeatFrame): HeatOutline {
  const { loading, comeUp, vent = 0, process, rest, unloading } = stages
  const heated = loading + comeUp + vent
  const at = [0, loading, heated, heated + process, heated + process + rest, heated + process + rest + unloading].map(frame.xOf)
  const [start = 0, lit = 0, boil = 0, off = 0, rested = 0, empty = 0] = at.map(round)
  const level = (height: number) => round(frame.base - height)
  const top = level(frame.full)
  const low = level(frame.step)
  const rise = vent > 0 ? ventedRise(stages, frame) : `L${boil} ${top}`
  const fall = vent > 0 ? `L${rested} ${low}` : `V${level(frame.half)}H${rested}V${low}`
  return {
    load: `M${start} ${level(0)}V${low}H${lit}${rise}H${off}${fall}H${empty}V${level(0)}Z`,
    block: `M${boil} ${top}H${off}V${level(0)}H${boil}Z`,
    blockFrom: boil,
    blockTo: off,
  }
}

/** Two thirds of the way up, a shelf as long as the venting, and the rest of the way. */
function ventedRise({ loading, comeUp, vent = 0 }: LoadStages, frame: HeatFrame): string {
  const shelf = frame.step + ((frame.full - frame.step) * 2) / 3
  const shelfFrom = loading + (comeUp * 2) / 3
  const y = round(frame.base - shelf)
  return `L${round(frame.xOf(shelfFrom))} ${y}H${round(frame.xOf(shelfFrom + vent))}L${round(frame.xOf(loading + comeUp + vent))} ${round(frame.base - frame.full)}`
}

const round = (length: number): number => Math.round(length * 10) / 10
