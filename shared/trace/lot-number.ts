import { ok, type Result, refuse } from '@/shared/result/result'
import { checkDigits97 } from '@/shared/trace/check-characters'
import { CODE_LETTERS, type CodeProblem, normaliseCode, strangeCharacter } from '@/shared/trace/code-alphabet'

/** What a lot is made of: the jars of one kettle batch that went through one canner load, or all of a batch that no canner takes. */
export interface LotParts {
  /** Two to four letters of the group, from {@link CODE_LETTERS}. */
  readonly group: string
  /** The canning day's date, `2027-08-26`; years 2000 to 2099. */
  readonly date: string
  /** One letter for the product on this day and the number of the batch, `D3`; 1 to 99. */
  readonly batch: string
  /** The number of the canner load on this day, 1 to 999; 0 for jars without a process, which go through none. */
  readonly load: number
}

const LETTER = `[${CODE_LETTERS}]`
const GROUP = new RegExp(`^${LETTER}{2,4}$`)
const BATCH = new RegExp(`^${LETTER}[1-9]\\d?$`)
const LOT = new RegExp(`^(${LETTER}{2,4})(\\d{2})(\\d{2})(\\d{2})(${LETTER}[1-9]\\d?)C(\\d{2}|[1-9]\\d{2})(\\d{2})$`)

/**
 * The lot number: group, date (year, month, day), kettle batch, canner load (C and its number), two check digits; `FH-270826-D3-C06-47`.
 * Jars that are kept cold from the start have C00.
 *
 * Letters and digits have fixed places, so a digit taken for a letter never parses, and ISO/IEC 7064 MOD 97-10 finds every other single slip and
 * every swap of neighbours.
 *
 * @returns the number as printed and stored, with its dashes
 * @throws RangeError when a part has no place in a lot number: the parts come from us, not from a form
 */
export function makeLotNumber(parts: LotParts): string {
  if (!GROUP.test(parts.group)) throw new RangeError(`Not a group code: ${parts.group}`)
  if (!BATCH.test(parts.batch)) throw new RangeError(`Not a batch code: ${parts.batch}`)
  if (!isRealDate(parts.date)) throw new RangeError(`Not a date of this century: ${parts.date}`)
  if (!Number.isInteger(parts.load) || parts.load < 0 || parts.load > 999) throw new RangeError(`Not a load number: ${parts.load}`)

  const date = parts.date.slice(2).replaceAll('-', '')
  const fields = [parts.group, date, parts.batch, `C${String(parts.load).padStart(2, '0')}`]
  return [...fields, checkDigits97(fields.join(''))].join('-')
}

/** Reads a lot number as people type it. Answers its parts and the number as printed, or which slip was made. */
export function readLotNumber(typed: string): Result<LotParts & { readonly lotNumber: string }, CodeProblem> {
  const code = normaliseCode(typed)
  const strange = strangeCharacter(code)
  if (strange !== undefined) return refuse({ kind: 'wrong-character', typed, character: strange })
  const match = LOT.exec(code)
  if (!match) return refuse({ kind: 'wrong-form', typed })

  const [, group, year, month, day, batch, load, check] = match
  if (checkDigits97(code.slice(0, -2)) !== check) return refuse({ kind: 'check-failed', typed })
  const parts = { group: String(group), date: `20${year}-${month}-${day}`, batch: String(batch), load: Number(load) }
  if (!isRealDate(parts.date)) return refuse({ kind: 'wrong-form', typed })
  return ok({ ...parts, lotNumber: makeLotNumber(parts) })
}

/**
 * One letter for each product of a day, in the order given, no letter twice: the first readable letter of its name that is still free, else the
 * first free letter of the alphabet.
 *
 * @param names - at most 22 product names, the number of letters there are
 */
export function suggestBatchLetters(names: readonly string[]): string[] {
  const taken: string[] = []
  for (const name of names) {
    const letter = [...plainLetters(name), ...CODE_LETTERS].find((each) => CODE_LETTERS.includes(each) && !taken.includes(each))
    if (letter === undefined) throw new RangeError(`More products than letters: ${names.length}`)
    taken.push(letter)
  }
  return taken
}

const plainLetters = (text: string) =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/[^A-Z]/g, '')

function isRealDate(date: string): boolean {
  if (!/^20\d{2}-\d{2}-\d{2}$/.test(date)) return false
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number)
  const isLeapYear = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  const days = [31, isLeapYear ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1]
  return days !== undefined && day >= 1 && day <= days
}
