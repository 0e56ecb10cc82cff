'use client'

import { type FormEvent, type ReactNode, startTransition, useActionState, useRef, useState } from 'react'
import { useRouter } from 'next/navigation'
import { useForm } from 'react-hook-form'
import { Notice } from '@/app/_ui/notice'
import { checkEntries, type Values } from './check-entries'
import { FormContext } from './form-context'
import type { FormState } from './form-state'
import { eventAddress, sendEvent } from './send-event'
import { submitCommand } from './submit-command'

interface CommandFormProps {
  /** Which change this form makes, by its command's name. */
  readonly command: string
  readonly groupId: string
  /** Made fresh by the page for this one form: a second tap of the same form counts once. */
  readonly formKey: string
  /** Where to go once it is saved; `{name}` is filled from the reply. */
  readonly next: string
  /** Input that the person does not type. */
  readonly fixed?: Readonly<Record<string, string | number>>
  readonly className?: string
  /** Keeps what was filled in on this device instead of sending it; with script alone. */
  readonly keep?: (filled: FormData) => Promise<FormState | null>
  readonly children: ReactNode
}

/**
 * A form that makes one change. Works before the script arrives; with it, entries are checked by the same schema as on the server,
 * and what was typed stays when it is refused.
 */
export function CommandForm(props: CommandFormProps) {
  const [firstKey] = useState(props.formKey)
  // A page that was saved and drawn again brings a new key, and with it an empty form. Its first form has one place on every drawing:
  // a posted form that comes back refused is told by its place, before any script has arrived.
  return <OneForm key={props.formKey === firstKey ? 'first' : props.formKey} {...props} />
}

function OneForm({ command, groupId, formKey, next, fixed = {}, className, keep, children }: CommandFormProps) {
  const [posted, submit] = useActionState(submitCommand, {})
  const [sent, setSent] = useState<FormState | null>(null)
  const state = sent ?? posted
  const router = useRouter()
  const address = eventAddress(command, groupId, fixed.dayId)
  const element = useRef<HTMLFormElement>(null)
  const form = useForm<Values>({ mode: 'onTouched', resolver: checkEntries(command, element) })

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const filled = new FormData(event.currentTarget)
    if (keep) return void form.handleSubmit(async () => setSent(await keep(filled)))(event)
    form.handleSubmit(() => startTransition(() => (address ? note(address, filled) : submit(filled))))(event)
  }

  async function note(to: string, filled: FormData) {
    const answer = await sendEvent(to, command, filled)
    setSent(answer)
    if (answer) return
    router.push(next)
    router.refresh()
  }

  return (
    <FormContext value={{ state, register: form.register, errors: form.formState.errors as never }}>
      <form ref={element} action={submit} onSubmit={send} className={className} noValidate={false}>
        <input type="hidden" name="_command" value={command} />
        <input type="hidden" name="_group" value={groupId} />
        <input type="hidden" name="_key" value={state.key ?? formKey} />
        <input type="hidden" name="_next" value={next} />
        {Object.entries(fixed).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {children}
        {state.refusal && <Notice {...state.refusal} />}
      </form>
    </FormContext>
  )
}
