/** How the jars of a load stand on the rack line: pitch and width of one, and how many are drawn. */
export type RackJars = { readonly drawn: number; readonly pitch: number; readonly width: number }

const WIDEST = 13
const NARROWEST = 5
const FIGURE = 44

/**
 * Fits the jars of a load between its own end and the next load's on the same rack; a figure beside them says how many they are.
 *
 * Where they would be too thin to tell apart, one jar stands for all and only the figure counts.
 */
export function rackJars(jars: number, room: number): RackJars {
  if (jars === 0) return { drawn: 0, pitch: WIDEST, width: WIDEST - 3 }
  const pitch = Math.min(WIDEST, Math.floor((room - FIGURE) / jars))
  return pitch < NARROWEST ? { drawn: 1, pitch: WIDEST, width: WIDEST - 3 } : { drawn: jars, pitch, width: pitch - Math.min(3, pitch / 4) }
}
