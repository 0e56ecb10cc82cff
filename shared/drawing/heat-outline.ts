/** Minutes of one canner load, stage after stage. All whole and at least 0. */
export type LoadStages = {
  readonly loading: number
  /** Boiling water: up to the full boil. Pressure: up to full steam. */
  readonly comeUp: number
  /** Pressure only: minutes of steam before the weight goes on, drawn as a shelf at two thirds. */
  readonly vent?: number
  /** Pressure only: from the closed vent to full pressure. */
  readonly pressurise?: number
  readonly process: number
  /** Waiting in the canner after the heat is off; in a pressure canner the pressure falls by itself meanwhile. */
  readonly rest: number
  readonly unloading: number
}

/** All minutes of a load together, from the first jar in to the last jar out. */
export const loadMinutes = ({ loading, comeUp, vent = 0, pressurise = 0, process, rest, unloading }: LoadStages): number =>
  loading + comeUp + vent + pressurise + process + rest + unloading

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
  const { loading, comeUp, vent = 0, pressurise = 0, process, rest } = stages
  const heated = loading + comeUp + vent + pressurise
  const at = [0, loading, heated, heated + process, heated + process + rest, loadMinutes(stages)].map(frame.xOf)
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

/** Up to two thirds, a shelf as long as the venting, and the rest of the way. */
function ventedRise({ loading, comeUp, vent = 0, pressurise = 0 }: LoadStages, frame: HeatFrame): string {
  const shelf = round(frame.base - frame.step - ((frame.full - frame.step) * 2) / 3)
  const steam = loading + comeUp
  const closed = steam + vent
  const full = `${round(frame.xOf(closed + pressurise))} ${round(frame.base - frame.full)}`
  return `L${round(frame.xOf(steam))} ${shelf}H${round(frame.xOf(closed))}L${full}`
}

const round = (length: number): number => Math.round(length * 10) / 10
