import { ok, type Result, refuse } from '@/shared/result/result'

/**
 * Largest error of a dial gauge, psi either way, that may be corrected for; beyond it the gauge is replaced.
 *
 * Source: Iowa State University Extension and Outreach, testing pressure canner dial gauges (2024).
 */
export const LARGEST_GAUGE_ERROR_PSI = 2

/** Why a dial gauge blocks its canner. */
export type GaugeProblem =
  | { readonly kind: 'untested' }
  | { readonly kind: 'expired'; readonly testedOn: string }
  | { readonly kind: 'error-too-large'; readonly errorPsi: number }

/** What is known of a dial gauge: see the fields of the same name in ProcessQuery. */
export type GaugeRecord = { readonly gaugeErrorPsi?: number; readonly gaugeTestedOn?: string | null; readonly askedOn?: string }

/**
 * The psi by which the needle must stand off the published pressure.
 *
 * A gauge that shows 1 psi too much must show 12 for a true 11. Dial gauges are tested every year
 * (Pacific Northwest Extension PNW 421, Using and Caring for Your Pressure Canner): on the anniversary of the test it still counts,
 * the day after it does not. A gauge with no record at all is not judged here.
 */
export function needleOffset({ gaugeErrorPsi = 0, gaugeTestedOn, askedOn }: GaugeRecord): Result<number, GaugeProblem> {
  if (gaugeTestedOn === null) return refuse({ kind: 'untested' })
  if (gaugeTestedOn !== undefined && askedOn !== undefined && !isWithinAYear(gaugeTestedOn, askedOn))
    return refuse({ kind: 'expired', testedOn: gaugeTestedOn })
  if (!(Math.abs(gaugeErrorPsi) <= LARGEST_GAUGE_ERROR_PSI)) return refuse({ kind: 'error-too-large', errorPsi: gaugeErrorPsi })
  return ok(gaugeErrorPsi)
}

/** ISO dates compare as text; a test of 29 February counts until 1 March, since "02-29" sorts before "03-01". */
function isWithinAYear(testedOn: string, askedOn: string): boolean {
  const anniversary = `${Number(testedOn.slice(0, 4)) + 1}${testedOn.slice(4)}`
  return testedOn <= askedOn && askedOn <= anniversary
}
