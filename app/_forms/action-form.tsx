'use client'

import { type FormEvent, type ReactNode, startTransition, useActionState, useRef } from 'react'
import { useForm } from 'react-hook-form'
import { Notice } from '@/app/_ui/notice'
import { checkEntries, type Values } from './check-entries'
import { FormContext } from './form-context'
import type { FormState } from './form-state'

interface ActionFormProps {
  /** The server action of the page. */
  readonly action: (state: FormState, form: FormData) => Promise<FormState>
  /** Which schema the entries are checked with. */
  readonly schema: string
  /** Made fresh by the page: a second tap counts once. */
  readonly formKey?: string
  /** Sent along and not shown. */
  readonly hidden?: Readonly<Record<string, string>>
  readonly className?: string
  /** What the page has to say before anything was sent. */
  readonly first?: FormState
  readonly children: ReactNode
}

/** A form of somebody who is not acting in a group: signing up, making a group, taking up an invitation. Works before the script arrives. */
export function ActionForm({ action, schema, formKey, hidden = {}, className, first = {}, children }: ActionFormProps) {
  const [state, submit] = useActionState(action, first)
  const element = useRef<HTMLFormElement>(null)
  const form = useForm<Values>({ mode: 'onTouched', resolver: checkEntries(schema, element) })

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const sent = new FormData(event.currentTarget)
    form.handleSubmit(() => startTransition(() => submit(sent)))(event)
  }

  return (
    <FormContext value={{ state, register: form.register, errors: form.formState.errors as never }}>
      <form ref={element} action={submit} onSubmit={send} className={className}>
        {formKey && <input type="hidden" name="_key" value={state.key ?? formKey} />}
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {children}
        {state.refusal && <Notice {...state.refusal} />}
      </form>
    </FormContext>
  )
}
