import type { Resolver } from 'react-hook-form'
import { FORM_SCHEMAS } from './form-schemas'

/** What the entries of a form hold, by name. */
export type Values = Record<string, unknown>

/** Checks the entries with the form's schema, the one that the server parses with; fields that are not shown are left to the server. */
export function checkEntries(schemaName: string, fixed: Readonly<Record<string, string | number>> = {}): Resolver<Values> {
  return async (values) => {
    const schema = await FORM_SCHEMAS[schemaName]?.()
    if (!schema) return { values, errors: {} }
    const typed = Object.entries(values).filter(([, value]) => value !== '' && value !== undefined && value !== null)
    const read = schema.safeParse({ ...fixed, ...Object.fromEntries(typed.map(([name, value]) => [name.replace(/\[\]$/, ''), value])) })
    if (read.success) return { values, errors: {} }
    const shown = read.error.issues.filter((issue) => String(issue.path[0] ?? '') in values)
    const errors = Object.fromEntries(shown.map((issue) => [String(issue.path[0]), { type: 'typed', message: issue.message }]))
    return Object.keys(errors).length > 0 ? { values: {}, errors } : { values, errors: {} }
  }
}
