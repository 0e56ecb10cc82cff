'use server'

import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_forms/form-state'
import { beginSession } from '@/lib/auth/begin-session'
import { answerVisitorForm } from '@/lib/http/answer-visitor-form'
import { clientAddress } from '@/lib/http/client-address'
import { nextPath } from '@/lib/http/next-path'
import { signUpAndIn } from '@/lib/services/account/sign-up-and-in'
import { SignUp } from '@/shared/forms/sign-in'

/** Makes the account, signs in, and goes where the person was going. */
export async function signUpAction(_: FormState, form: FormData): Promise<FormState> {
  const from = clientAddress((await headers()).get('x-forwarded-for'))
  const answer = await answerVisitorForm(form, {
    schema: SignUp,
    secrets: ['password'],
    run: (typed, key) => signUpAndIn(typed, key, from),
  })
  if ('refusal' in answer) return answer

  await beginSession(answer.done)
  redirect(nextPath(form.get('_next')))
}
