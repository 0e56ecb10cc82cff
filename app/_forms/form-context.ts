'use client'

import { createContext, useContext } from 'react'
import type { FieldError, UseFormRegister } from 'react-hook-form'
import type { FormState } from './form-state'

/** What the entries inside a form need to know of it. */
export interface FormLink {
  readonly state: FormState
  readonly register: UseFormRegister<Record<string, unknown>>
  readonly errors: Readonly<Record<string, FieldError | undefined>>
}

export const FormContext = createContext<FormLink | null>(null)

/** What one entry shows: what was typed last time (or the first value) and what is wrong with it. */
export function useEntry(name: string, first?: string | number | null) {
  const link = useContext(FormContext)
  if (!link) throw new Error(`the entry ${name} stands outside a form`)
  const key = name.replace(/\[\]$/, '')
  const { ref, onBlur, onChange } = link.register(name)
  const local = link.errors[name]?.message
  return {
    typed: (link.state.typed?.[key] as string | undefined) ?? first,
    typedList: link.state.typed?.[key] as readonly string[] | undefined,
    errors: local ? [local] : errorsOf(link.state.refusal?.fields, key),
    wired: { ref, onBlur, onChange },
  }
}

/** What the server says of an entry; a list is also wrong in one of its items, said as `skills.0`. */
function errorsOf(fields: Readonly<Record<string, readonly string[]>> | undefined, key: string): readonly string[] | undefined {
  return fields?.[key] ?? Object.entries(fields ?? {}).find(([path]) => path.startsWith(`${key}.`))?.[1]
}
