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
  const { ref, onBlur, onChange } = useLink(name).register(name)
  const { typed, errors } = useReply(name)
  return { typed: (typed as string | undefined) ?? first, errors, wired: { ref, onBlur, onChange } }
}

/** The same for an entry that keeps its own count or is a list: it is looked at when the form is sent. */
export function useReply(name: string) {
  const { state, errors } = useLink(name)
  const local = errors[name]?.message
  return { typed: state.typed?.[name], errors: local ? [local] : errorsOf(state.refusal?.fields, name) }
}

function useLink(name: string): FormLink {
  const link = useContext(FormContext)
  if (!link) throw new Error(`the entry ${name} stands outside a form`)
  return link
}

/** What the server says of an entry; a list is also wrong in one of its items, said as `skills.0`. */
function errorsOf(fields: Readonly<Record<string, readonly string[]>> | undefined, key: string): readonly string[] | undefined {
  return fields?.[key] ?? Object.entries(fields ?? {}).find(([path]) => path.startsWith(`${key}.`))?.[1]
}
