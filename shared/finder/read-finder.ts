import { FINDER_FIELDS, type FinderField, LONGEST_QUESTION, ProcessFinder } from '@/shared/forms/process-finder'
import { ok, type Result, refuse } from '@/shared/result/result'

/** The address behind the "?", as a router hands it over: a name that stands there twice comes as a list. */
export type AddressFields = Readonly<Record<string, string | readonly string[] | undefined>>

/** What was typed, by field, so that nobody types it twice. */
export type FinderTyped = Readonly<Partial<Record<FinderField, string>>>

/** A question that was read, or the entries that do not fit (then nothing is looked up). */
export type FinderRead = {
  readonly typed: FinderTyped
  readonly asked: ProcessFinder | null
  readonly errors: Readonly<Partial<Record<FinderField, readonly string[]>>>
}

/** The address is not a question at all. */
export type FinderProblem =
  | { readonly kind: 'too-long' }
  | { readonly kind: 'unknown-name'; readonly name: string }
  | { readonly kind: 'said-twice'; readonly name: FinderField }

/**
 * Reads a question to the finder strictly: known names only, each once, 2 kB at most.
 *
 * An entry that does not fit is named with what belongs there; the others come back as typed.
 */
export function readFinder(address: AddressFields): Result<FinderRead, FinderProblem> {
  const fields = Object.entries(address).filter((field): field is [string, string | readonly string[]] => field[1] !== undefined)
  if (lengthOf(fields) > LONGEST_QUESTION) return refuse({ kind: 'too-long' })
  const typed: Partial<Record<FinderField, string>> = {}
  for (const [name, value] of fields) {
    if (!isFinderField(name)) return refuse({ kind: 'unknown-name', name: name.slice(0, 40) })
    if (typeof value !== 'string') return refuse({ kind: 'said-twice', name })
    typed[name] = value
  }
  const read = ProcessFinder.safeParse(typed)
  if (read.success) return ok({ typed, asked: read.data, errors: {} })
  const errors: Partial<Record<FinderField, string[]>> = {}
  for (const { path, message } of read.error.issues) {
    const name = path[0]
    if (typeof name === 'string' && isFinderField(name)) errors[name] = [...(errors[name] ?? []), message]
  }
  return ok({ typed, asked: null, errors })
}

const isFinderField = (name: string): name is FinderField => FINDER_FIELDS.some((field) => field === name)

const lengthOf = (fields: readonly [string, string | readonly string[]][]): number =>
  fields.reduce((sum, [name, value]) => sum + encodeURIComponent(name).length + encodeURIComponent(String(value)).length + 2, 0)
