import { JAR_MILLILITRES, type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { cannerName, type Gauge, type Method } from '@/shared/kitchen/methods'
import { METRES_PER_FOOT } from '@/shared/process/elevation'
import type { Band, Source } from '@/shared/process/published-row'
import type { JarAcid, ScheduledProcess } from '@/shared/process/scheduled-process'
import { sayKitchenAmount, sayNumber } from '@/shared/units/say-kitchen-amount'

/** "½ in (13 mm)". */
export const sayHeadspace = (inches: number): string => `${sayNumber(inches)} in (${Math.round(inches * 25.4)} mm)`

/** "pint jars", and of what volume: "16 fl oz, 473 mL". */
export const sayJars = (jar: JarSize): string => (jar === '12-oz' ? jarName(jar, 2) : `${jarName(jar)} jars`)
export const sayJarVolume = (jar: JarSize): string =>
  `${Math.round(JAR_MILLILITRES[jar] / ML_PER_FLUID_OUNCE)} fl oz, ${JAR_MILLILITRES[jar]} mL`

/** "0–1,000 ft (to 305 m)", "above 6,000 ft (1,829 m)": the printed band; the feet decide. */
export function sayBand({ minFeet, maxFeet }: Pick<Band, 'minFeet' | 'maxFeet'>): string {
  if (maxFeet === null) return `above ${feetAndMetres(minFeet - 1)}`
  return `${minFeet.toLocaleString('en-US')}–${maxFeet.toLocaleString('en-US')} ft (to ${inMetres(maxFeet)} m)`
}

/** "minutes at full boil", "minutes at 11 psi on a dial gauge": what the minutes count from. */
export function sayHeat({ method, psi, gauge }: Pick<ScheduledProcess, 'method' | 'psi' | 'gauge'>): string {
  if (method === 'boiling-water') return 'minutes at full boil'
  if (method === 'atmospheric-steam') return 'minutes in full steam'
  return `minutes at ${psi} psi, ${gauge} gauge`
}

/** "boiling-water canner", "pressure canner, weighted gauge". */
export const sayCanner = (method: Method, gauge: Gauge | null): string =>
  gauge === null ? cannerName(method) : `${cannerName(method)}, ${gauge} gauge`

/**
 * Acid for one jar, or where in the recipe it is; null where the food needs none added.
 *
 * @param jarRow - the jar whose amounts are printed
 * @param jar - the jar that is filled; a smaller one gets all that is printed for `jarRow`
 */
export function sayAcid(acid: JarAcid | null, jarRow: JarSize, jar: JarSize = jarRow): string | null {
  if (acid === null) return null
  if (acid.kind === 'in-the-recipe') return acid.note
  const into = jar === jarRow ? `Into each ${jarName(jar)}` : `Into each ${jarName(jar)}, not less than printed for a ${jarName(jarRow)}`
  const choices = [
    `${sayKitchenAmount(acid.lemonJuiceTbsp, 'us-tbsp')} bottled lemon juice`,
    `${sayKitchenAmount(acid.citricAcidTsp, 'us-tsp')} citric acid`,
    ...(acid.vinegarTbsp === null ? [] : [`${sayKitchenAmount(acid.vinegarTbsp, 'us-tbsp')} vinegar of 5 % acidity`]),
  ]
  return `${into}: ${choices.join(', or ')}. ${acid.note}`
}

/** "Michigan State University Extension, Preserving Food Safely, edition 1997 …, part …": publication, edition and section. */
export const saySource = ({ publication, edition, section }: Source): string => `${publication} (${edition}), ${section}`

/** Millilitres in a US fluid ounce, exact. Source: NIST Handbook 44, Appendix C (General Tables of Units of Measurement). */
const ML_PER_FLUID_OUNCE = 29.5735295625

/** The same words with a capital first letter, for the start of a line. */
export const capitalised = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`

const inMetres = (feet: number): string => Math.round(feet * METRES_PER_FOOT).toLocaleString('en-US')
const feetAndMetres = (feet: number): string => `${feet.toLocaleString('en-US')} ft (${inMetres(feet)} m)`
