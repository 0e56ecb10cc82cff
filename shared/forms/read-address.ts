import { z } from 'zod'
import { ok, type Result, refuse } from '@/shared/result/result'

/** Longest question that is read from an address, in characters behind the "?". */
export const LONGEST_QUESTION = 2048

/** The address behind the "?", as a router hands it over: a name that stands there twice comes as a list. */
export type AddressFields = Readonly<Record<string, string | readonly string[] | undefined>>

/** A question that was read (`asked`), or the entries that do not fit (`errors`, then `asked` is null). `typed` is what was typed. */
export type AddressRead<Name extends string, Asked> = {
  readonly typed: Readonly<Partial<Record<Name, string>>>
  readonly asked: Asked | null
  readonly errors: Readonly<Partial<Record<Name, readonly string[]>>>
}

/** The address is not a question at all. */
export type AddressProblem =
  | { readonly kind: 'too-long' }
  | { readonly kind: 'unknown-name'; readonly name: string }
  | { readonly kind: 'said-twice'; readonly name: string }

/**
 * Reads a question that a form or a link sends in the address, strictly: known names only, each once, 2 kB at most.
 *
 * An entry that does not fit is named with what belongs there; the others come back as typed.
 */
export function readAddress<Name extends string, Asked>(
  schema: z.ZodType<Asked> & { readonly shape: Readonly<Record<Name, unknown>> },
  address: AddressFields,
): Result<AddressRead<Name, Asked>, AddressProblem> {
  const fields = Object.entries(address).filter((field): field is [string, string | readonly string[]] => field[1] !== undefined)
  if (lengthOf(fields) > LONGEST_QUESTION) return refuse({ kind: 'too-long' })
  for (const [name, value] of fields) {
    if (!Object.hasOwn(schema.shape, name)) return refuse({ kind: 'unknown-name', name: name.slice(0, 40) })
    if (typeof value !== 'string') return refuse({ kind: 'said-twice', name })
  }
  const typed = Object.fromEntries(fields) as AddressRead<Name, Asked>['typed']
  const read = schema.safeParse(typed)
  const errors = read.success ? {} : z.flattenError(read.error).fieldErrors
  return ok({ typed, asked: read.success ? read.data : null, errors: errors as AddressRead<Name, Asked>['errors'] })
}

const lengthOf = (fields: readonly [string, string | readonly string[]][]): number =>
  fields.reduce((sum, [name, value]) => sum + encodeURIComponent(name).length + encodeURIComponent(String(value)).length + 2, 0)
