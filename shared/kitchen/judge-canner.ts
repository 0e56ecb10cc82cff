import { sayShortDate } from '@/shared/time/calendar-date'
import { type GaugeProblem, LARGEST_GAUGE_ERROR_PSI, needleOffset } from '@/shared/process/gauge-rule'

/** What the group knows of a canner, as far as it decides whether the canner may be used. Dates are ISO dates. */
export interface CannerRecord {
  readonly method: string
  readonly gauge: string | null
  readonly gaugeTestedOn: string | null
  /** What the dial shows above the true pressure, psi; null when the test gave no figure. */
  readonly gaugeErrorPsi: number | null
  /** The group's own reason for keeping it out of use. */
  readonly outOfUse: string | null
}

export type CannerVerdict = { readonly isUsable: true } | { readonly isUsable: false; readonly whyNot: string; readonly instead: string }

/** Where the yearly test of dial gauges and the largest error are from, as said beside a verdict. */
export const GAUGE_TEST_SOURCE =
  'Pacific Northwest Extension PNW 421, Using and Caring for Your Pressure Canner; Iowa State University Extension and Outreach, testing pressure canner dial gauges (2024)'

/**
 * May this canner be used on that date?
 *
 * A dial gauge is tested every year and may be off by at most 2 psi; a weighted gauge needs no test (sources: GAUGE_TEST_SOURCE).
 *
 * @param on - the day of the canning, `2027-08-26`
 */
export function judgeCanner(canner: CannerRecord, on: string): CannerVerdict {
  if (canner.outOfUse !== null) return no(`Out of use: ${canner.outOfUse}`, 'Bring it back into use when that is mended.')
  if (canner.method !== 'pressure' || canner.gauge !== 'dial') return { isUsable: true }
  const offset = needleOffset({ gaugeTestedOn: canner.gaugeTestedOn, gaugeErrorPsi: canner.gaugeErrorPsi ?? 0, askedOn: on })
  if (!offset.ok) return gaugeVerdict(offset.problem, on)
  if (canner.gaugeErrorPsi === null)
    return no('The test gave no figure: nobody knows how far off the dial is.', 'Enter the psi that the test found, 0 when it was true.')
  return { isUsable: true }
}

function gaugeVerdict(problem: GaugeProblem, on: string): CannerVerdict {
  switch (problem.kind) {
    case 'untested':
      return no('The dial gauge has no test on record.', 'Have it tested at an extension office, or use a canner with a weighted gauge.')
    case 'expired':
      return problem.testedOn > on
        ? no(
            `The dial gauge is tested only on ${sayShortDate(problem.testedOn)}, after that day.`,
            'Enter the test that counted on that day.',
          )
        : no(
            `The dial gauge was last tested on ${sayShortDate(problem.testedOn)}, more than a year before.`,
            'Have it tested again, or use a canner with a weighted gauge.',
          )
    case 'error-too-large':
      return no(
        `The dial is off by ${problem.errorPsi} psi, more than ${LARGEST_GAUGE_ERROR_PSI}.`,
        'Replace the gauge and have the new one tested.',
      )
    default:
      return problem satisfies never
  }
}

const no = (whyNot: string, instead: string): CannerVerdict => ({ isUsable: false, whyNot, instead })
