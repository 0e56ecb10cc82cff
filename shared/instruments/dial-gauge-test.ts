/**
 * The last day on which a dial-gauge test still counts: its anniversary, as an ISO date. A test of 29 February counts through the 28th.
 *
 * The rule and its source stand at `needleOffset`.
 *
 * @param testedOn - ISO date of the test
 */
export function lastDayOfTest(testedOn: string): string {
  const [year = '', month = '', day = ''] = testedOn.slice(0, 10).split('-')
  return `${Number(year) + 1}-${month}-${month === '02' && day === '29' ? '28' : day}`
}
