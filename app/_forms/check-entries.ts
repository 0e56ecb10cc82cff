import type { RefObject } from 'react'
import type { FieldErrors, Resolver } from 'react-hook-form'
import { decodeForm } from '@/shared/forms/decode-form'
import { FORM_SCHEMAS } from './form-schemas'

/** What the entries of a form hold, by name. */
export type Values = Record<string, unknown>

/**
 * Checks what a form would send, read as the server reads it, with the schema that the server parses with.
 *
 * Only what the form shows can be wrong here: what is not shown is left to the server, which says it.
 */
export function checkEntries(schemaName: string, form: RefObject<HTMLFormElement | null>): Resolver<Values> {
  return async (values) => {
    // Without a network the schema may not come: then the server checks, as it does without script.
    const schema = await FORM_SCHEMAS[schemaName]?.().catch(() => null)
    if (!schema || !form.current) return { values, errors: {} }
    const read = schema.safeParse(decodeForm(new FormData(form.current)).input)
    if (read.success) return { values, errors: {} }
    const shown = shownNames(form.current)
    const errors: FieldErrors<Values> = {}
    for (const { path, message } of read.error.issues) {
      const name = String(path[0] ?? '')
      if (shown.has(name)) errors[name] ??= { type: 'typed', message }
    }
    return Object.keys(errors).length > 0 ? { values: {}, errors } : { values, errors: {} }
  }
}

/** The names of entries that somebody can see and mend. */
function shownNames(form: HTMLFormElement): ReadonlySet<string> {
  const entries = [...form.elements].filter((entry) => 'name' in entry && entry.getAttribute('type') !== 'hidden')
  return new Set(entries.map((entry) => String(entry.getAttribute('name') ?? '').replace(/\[\]$/, '')))
}
