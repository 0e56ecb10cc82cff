'use server'

import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_forms/form-state'
import { beginSession } from '@/lib/auth/begin-session'
import { checkSignIn } from '@/lib/auth/check-sign-in'
import { answerVisitorForm } from '@/lib/http/answer-visitor-form'
import { clientAddress } from '@/lib/http/client-address'
import { nextPath } from '@/lib/http/next-path'
import { SignIn } from '@/shared/forms/sign-in'
import { ok, refuse } from '@/shared/result/result'
import { noFit, tooManyTries } from '@/shared/wording/account'

/** Signs in from a posted form, for a browser whose script has not arrived. */
export async function signInWithoutScript(_: FormState, form: FormData): Promise<FormState> {
  const from = clientAddress((await headers()).get('x-forwarded-for'))
  const answer = await answerVisitorForm(form, {
    schema: SignIn,
    secrets: ['password'],
    run: async (typed) => {
      const check = await checkSignIn(typed, from)
      if (check.kind === 'fits') return ok(check.session)
      return refuse(check.kind === 'no-fit' ? noFit() : tooManyTries())
    },
  })
  if ('refusal' in answer) return answer

  await beginSession(answer.done)
  redirect(nextPath(form.get('_next')))
}
