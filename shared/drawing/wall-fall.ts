/** A point on the wall chart. */
export type WallPoint = { readonly x: number; readonly y: number }

const CORNER = 14
const LONG_WAIT = 40

/** The batch's line from the end of a bar down to the next station: out to the right, one small round corner, and straight down. */
export function wallFall(from: WallPoint, to: WallPoint): string {
  const x = Math.max(to.x, from.x + 6)
  return `M${from.x} ${from.y}Q${x} ${from.y} ${x} ${from.y + CORNER}V${to.y}`
}

/** A fall whose jars wait: two lines, the level one, and its last part that lies after the latest loading. */
export type WaitingFall = { readonly path: string; readonly late: string | null; readonly stopAt: number | null }

/**
 * The line of filled jars to their canner.
 *
 * A short wait is one fall. A longer one falls to `level`, the top of the canner's row, runs along it, and drops in when it is loaded; past `latestX`
 * it is late and drawn apart.
 */
export function wallWait(from: WallPoint, to: WallPoint, level: number, latestX: number): WaitingFall {
  if (to.x - from.x <= LONG_WAIT) return { path: wallFall(from, to), late: null, stopAt: null }
  const down = from.x + CORNER
  const turn = `M${from.x} ${from.y}Q${down} ${from.y} ${down} ${from.y + CORNER}V${level - CORNER}Q${down} ${level} ${down + CORNER} ${level}`
  const drop = `H${to.x - CORNER}Q${to.x} ${level} ${to.x} ${level + CORNER}V${to.y}`
  const isLate = latestX < to.x - CORNER
  if (!isLate) return { path: `${turn}${drop}`, late: null, stopAt: latestX }
  const stop = Math.max(latestX, down + CORNER)
  return { path: `${turn}H${stop}`, late: `M${stop} ${level}${drop}`, stopAt: stop }
}
