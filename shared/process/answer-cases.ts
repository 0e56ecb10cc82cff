import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, METHODS, PACKS } from '@/shared/kitchen/methods'
import { ok, type Result, refuse } from '@/shared/result/result'
import { sayProcessNextStep, sayProcessRefusal } from '@/shared/wording/say-process-refusal'
import { lookUpProcess } from './look-up-process'
import { type ProcessQuery, UNSAFE_METHODS } from './process-query'
import type { RefusalCode } from './process-refusal'
import type { ShorterPrint, Source } from './published-row'

/** The answer to one case, in the form that the command line and HTTP give out. */
export type CaseAnswer =
  | {
      readonly id: string | number
      readonly ok: true
      readonly minutes: number
      readonly psi: number | null
      readonly process: string
      readonly source: Source & { readonly band: string; readonly rowKey: string; readonly shorterPrint?: ShorterPrint }
    }
  | { readonly id: string | number; readonly ok: false; readonly reason: RefusalCode; readonly message: string }

/** Input that is not a list of cases: which case (by its id, or its place from 1), which field, and what belongs there. */
export type CasesProblem = { readonly case: string; readonly field: string; readonly expected: string }

/**
 * Answers many look-ups, in the order given.
 *
 * A case is `{id, food, pack, jar, method, gauge, elevationFeet}`; `pack` and `gauge` may be null or absent, and an elevation that is null
 * or absent is answered with the refusal "elevation-unknown". `elevationMetres`, `option`, `gaugeErrorPsi`, `gaugeTestedOn` and `askedOn`
 * may be added; other fields are left alone.
 *
 * @param input - parsed JSON
 * @returns one answer a case, or the first case that cannot be read
 */
export function answerCases(input: unknown): Result<CaseAnswer[], CasesProblem> {
  if (!Array.isArray(input)) return refuse({ case: 'the file', field: 'itself', expected: 'an array of cases' })
  const answers: CaseAnswer[] = []
  for (const [index, each] of input.entries()) {
    const answered = answerCase(each, index + 1)
    if (!answered.ok) return answered
    answers.push(answered.value)
  }
  return ok(answers)
}

/** "case 3 ("jam-7"), field jar: expected one of half-pint, 12-oz, …". */
export const sayCasesProblem = (problem: CasesProblem): string => `${problem.case}, ${problem.field}: expected ${problem.expected}`

type Fields = Readonly<Record<string, unknown>>

function answerCase(value: unknown, place: number): Result<CaseAnswer, CasesProblem> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse({ case: `case ${place}`, field: 'itself', expected: 'an object' })
  const fields: Fields = { ...value }
  const { id } = fields
  if (typeof id !== 'string' && typeof id !== 'number')
    return refuse({ case: `case ${place}`, field: 'field id', expected: 'a text or a number' })

  const wrong = CHECKS.find(([field, isRight]) => !isRight(fields[field]))
  if (wrong !== undefined) return refuse({ case: `case ${place} ("${id}")`, field: `field ${wrong[0]}`, expected: wrong[2] })
  return ok(answerQuery(id, readQuery(fields)))
}

const oneOf = (values: readonly string[]) => (value: unknown) => values.some((each) => each === value)
const orNothing = (isRight: (value: unknown) => boolean) => (value: unknown) => value === undefined || value === null || isRight(value)
const isNumber = (value: unknown) => Number.isFinite(value)
const isDate = (value: unknown) => /^\d{4}-\d{2}-\d{2}$/.test(String(value))
const ALL_METHODS = [...METHODS, ...UNSAFE_METHODS]

const CHECKS: readonly (readonly [field: string, isRight: (value: unknown) => boolean, expected: string])[] = [
  ['food', (value) => typeof value === 'string' && value.trim() !== '', 'a process id or a name'],
  ['pack', orNothing(oneOf(PACKS)), `${PACKS.join(', ')} or null`],
  ['jar', oneOf(JAR_SIZES), `one of ${JAR_SIZES.join(', ')}`],
  ['method', oneOf(ALL_METHODS), `one of ${ALL_METHODS.join(', ')}`],
  ['gauge', orNothing(oneOf(GAUGES)), `${GAUGES.join(', ')} or null`],
  ['elevationFeet', orNothing(isNumber), 'a number of feet'],
  ['elevationMetres', orNothing(isNumber), 'a number of metres'],
  ['option', orNothing((value) => Number.isInteger(value)), 'a whole number'],
  ['gaugeErrorPsi', orNothing(isNumber), 'a number of psi'],
  ['gaugeTestedOn', orNothing(isDate), 'a date such as 2027-08-26, or null when never tested'],
  ['askedOn', orNothing(isDate), 'a date such as 2027-08-26'],
]

/** The fields have been checked one by one, so the query may be read off them. */
function readQuery(fields: Fields): ProcessQuery {
  const { food, pack = null, jar, method, gauge = null, option, gaugeErrorPsi, gaugeTestedOn, askedOn } = fields
  const given = { option: option ?? undefined, gaugeErrorPsi: gaugeErrorPsi ?? undefined, askedOn: askedOn ?? undefined }
  return { food, pack, jar, method, gauge, elevation: readElevation(fields), gaugeTestedOn, ...given } as ProcessQuery
}

function readElevation({ elevationFeet, elevationMetres }: Fields): ProcessQuery['elevation'] {
  if (typeof elevationFeet === 'number') return { feet: elevationFeet }
  return typeof elevationMetres === 'number' ? { metres: elevationMetres } : null
}

function answerQuery(id: string | number, query: ProcessQuery): CaseAnswer {
  const found = lookUpProcess(query)
  if (!found.ok) {
    const { problem } = found
    return { id, ok: false, reason: problem.code, message: `${sayProcessRefusal(problem)} ${sayProcessNextStep(problem)}` }
  }
  const { minutes, psi, processId, source, band, rowKey, shorterPrint } = found.value
  const differs = shorterPrint === null ? {} : { shorterPrint }
  return { id, ok: true, minutes, psi, process: processId, source: { ...source, band, rowKey, ...differs } }
}
