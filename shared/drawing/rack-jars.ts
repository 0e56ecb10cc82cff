/** How the jars of a load stand on the rack line: pitch and width of one, how many are drawn, and the words that count them. */
export type RackJars = { readonly drawn: number; readonly pitch: number; readonly width: number; readonly says: string }

const WIDEST = 13
const NARROWEST = 5
const FIGURE = 44
const LETTER = 14

/**
 * Fits the jars of a load between its own end and the next load's on the same rack; a figure beside them says how many they are.
 *
 * Where they would be too thin to tell apart none is drawn, and they are only counted: "8 jars", or "8" where the words have no room either.
 */
export function rackJars(jars: number, room: number): RackJars {
  const counted = { drawn: 0, pitch: WIDEST, width: WIDEST - 3 }
  if (jars === 0) return { ...counted, says: '' }
  const pitch = Math.min(WIDEST, Math.floor((room - FIGURE) / jars))
  if (pitch >= NARROWEST) return { drawn: jars, pitch, width: pitch - Math.min(3, pitch / 4), says: String(jars) }
  const words = jars === 1 ? '1 jar' : `${jars} jars`
  return { ...counted, says: words.length * LETTER <= room ? words : String(jars) }
}
