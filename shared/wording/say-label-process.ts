import type { Method } from '@/shared/kitchen/methods'

const METHOD_WORDS: Readonly<Record<Method, string>> = {
  'boiling-water': 'Boiling water',
  'atmospheric-steam': 'Steam',
  pressure: 'Pressure',
}

/**
 * Metres in one international foot, exact.
 *
 * Source: NIST Handbook 44, Appendix C (General Tables of Units of Measurement).
 */
const METRES_PER_FOOT = 0.3048

/** "Boiling water, 10 min, 650 ft (198 m)", "Pressure 11 psi, 20 min, 650 ft (198 m)": what a jar had, as its label says it. */
export function sayLabelProcess(method: Method, minutes: number, psi: number | null, elevationFeet: number): string {
  const heat = psi === null ? METHOD_WORDS[method] : `${METHOD_WORDS[method]} ${psi} psi`
  const metres = Math.round(elevationFeet * METRES_PER_FOOT)
  return `${heat}, ${minutes} min, ${elevationFeet.toLocaleString('en-US')} ft (${metres.toLocaleString('en-US')} m)`
}
