import type { AddressFields } from '@/shared/forms/read-address'

/** A question as one string, as it stands behind the "?": two addresses with the same one ask the same. */
export const questionOf = (address: AddressFields): string =>
  new URLSearchParams(
    Object.entries(address).flatMap(([name, value]) => (value === undefined ? [] : [value].flat().map((each) => [name, each]))),
  ).toString()

/** The fields of an address as a router hands them over: a name that stands there twice comes as a list. */
export function fieldsOf(search: Iterable<[string, string]>): AddressFields {
  const fields = new Map<string, string | string[]>()
  for (const [name, value] of search) {
    const before = fields.get(name)
    fields.set(name, before === undefined ? value : [before, value].flat())
  }
  return Object.fromEntries(fields)
}
