'use client'

import { type FormEvent, useRef, useState } from 'react'
import { useForm } from 'react-hook-form'
import { checkEntries, type Values } from '@/app/_forms/check-entries'
import { FieldEntry } from '@/app/_forms/entries'
import { FormContext } from '@/app/_forms/form-context'
import type { FormState } from '@/app/_forms/form-state'
import { Button } from '@/app/_ui/button'
import { Notice } from '@/app/_ui/notice'
import { noConnection, signInProblem } from '@/shared/wording/account'

/** A link by mail. The answer is the same whether or not the address has an account. */
export function MailLinkForm({ next }: { next: string }) {
  const [state, setState] = useState<FormState>({})
  const element = useRef<HTMLFormElement>(null)
  const form = useForm<Values>({ mode: 'onTouched', resolver: checkEntries('mail-link', element) })

  async function mailNow({ email }: Values) {
    try {
      const { signIn } = await import('next-auth/react')
      const answer = await signIn('email', { redirect: false, email: String(email), callbackUrl: next })
      if (answer?.ok && !answer.error) return window.location.assign('/sign-in/mailed')
      setState({ refusal: signInProblem(answer?.error ?? 'no-answer') ?? noConnection() })
    } catch {
      setState({ refusal: noConnection() })
    }
  }

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    setState({})
    form.handleSubmit(mailNow)(event)
  }

  return (
    <FormContext value={{ state, register: form.register, errors: form.formState.errors as never }}>
      <form ref={element} method="post" onSubmit={send} className="form">
        <FieldEntry
          name="email"
          label="Send a link to"
          hint="The link works once, for 15 minutes."
          type="email"
          inputMode="email"
          autoComplete="email"
          required
          maxLength={254}
        />
        {state.refusal && <Notice {...state.refusal} />}
        <noscript>
          <p className="why">This way in needs script in your browser. The password above works without.</p>
        </noscript>
        <Button kind="plain" busy={form.formState.isSubmitting}>
          {form.formState.isSubmitting ? 'Sending' : 'Mail me a link'}
        </Button>
      </form>
    </FormContext>
  )
}
