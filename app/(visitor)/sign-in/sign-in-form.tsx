'use client'

import { type FormEvent, useActionState, useRef, useState } from 'react'
import { useForm } from 'react-hook-form'
import { checkEntries, type Values } from '@/app/_forms/check-entries'
import { FieldEntry } from '@/app/_forms/entries'
import { FormContext } from '@/app/_forms/form-context'
import type { FormState } from '@/app/_forms/form-state'
import { Button } from '@/app/_ui/button'
import { Notice } from '@/app/_ui/notice'
import { noConnection, signInProblem } from '@/shared/wording/account'
import { signInWithoutScript } from './actions'

/** E-mail and password. With script next-auth signs in; before the script arrives the form is posted and the server does the same. */
export function SignInForm({ next, formKey, first }: { next: string; formKey: string; first: FormState }) {
  const [posted, submit] = useActionState(signInWithoutScript, first)
  const [tried, setTried] = useState<FormState | null>(null)
  const state = tried ?? posted
  const element = useRef<HTMLFormElement>(null)
  const form = useForm<Values>({ mode: 'onTouched', resolver: checkEntries('sign-in', element) })

  async function signInNow({ email, password }: Values) {
    try {
      const { signIn } = await import('next-auth/react')
      const answer = await signIn('credentials', { redirect: false, email: String(email), password: String(password), callbackUrl: next })
      if (answer?.ok && !answer.error) return window.location.assign(next)
      setTried({ refusal: signInProblem(answer?.error ?? 'no-answer') ?? noConnection() })
    } catch {
      setTried({ refusal: noConnection() })
    }
  }

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    setTried({})
    form.handleSubmit(signInNow)(event)
  }

  return (
    <FormContext value={{ state, register: form.register, errors: form.formState.errors as never }}>
      <form ref={element} action={submit} onSubmit={send} className="form">
        <input type="hidden" name="_key" value={formKey} />
        <input type="hidden" name="_next" value={next} />
        <FieldEntry name="email" label="E-mail" type="email" inputMode="email" autoComplete="username" required maxLength={254} />
        <FieldEntry name="password" label="Password" type="password" autoComplete="current-password" required maxLength={200} />
        {state.refusal && <Notice {...state.refusal} />}
        <Button busy={form.formState.isSubmitting}>{form.formState.isSubmitting ? 'Signing in' : 'Sign in'}</Button>
      </form>
    </FormContext>
  )
}
