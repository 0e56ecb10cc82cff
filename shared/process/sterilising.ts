import { michiganState } from './sources'

/** Source of the rules for empty jars. */
export const STERILISING_SOURCE = michiganState('Sterilization of empty jars (item 01600946)')

/** Jars need no sterilising where the process in boiling water lasts at least this many minutes. */
export const STERILE_BELOW_MINUTES = 10

/**
 * Minutes of boiling that sterilise empty jars: 10 up to 1,000 ft and 1 more for each further 1,000 ft.
 *
 * A part of a thousand counts as a whole one, which is the cautious reading; the publication does not say how it rounds.
 *
 * @param elevationFeet - whole feet, 0 or more
 */
export const steriliseMinutes = (elevationFeet: number): number => 10 + Math.max(0, Math.ceil((elevationFeet - 1000) / 1000))
