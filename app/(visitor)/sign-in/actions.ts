'use server'

import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_forms/form-state'
import { beginSession } from '@/lib/auth/begin-session'
import { checkSignIn } from '@/lib/auth/check-sign-in'
import { mailLink, openMailedLink } from '@/lib/auth/mailed-link'
import { answerVisitorForm } from '@/lib/http/answer-visitor-form'
import { clientAddress } from '@/lib/http/client-address'
import { nextPath } from '@/lib/http/next-path'
import { MailedLink, MailLink, SignIn } from '@/shared/forms/sign-in'
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

/** Mails a link to sign in. What is said after it is the same for everybody. */
export async function mailLinkAction(_: FormState, form: FormData): Promise<FormState> {
  const next = nextPath(form.get('_next'))
  const answer = await answerVisitorForm(form, { schema: MailLink, run: ({ email }) => mailLink(email, next, new Date()) })
  if ('refusal' in answer) return answer
  redirect('/sign-in/mailed')
}

/** Signs in by a mailed link. */
export async function signInByLink(_: FormState, form: FormData): Promise<FormState> {
  const answer = await answerVisitorForm(form, { schema: MailedLink, secrets: ['token'], run: (link) => openMailedLink(link, new Date()) })
  if ('refusal' in answer) return answer

  await beginSession(answer.done)
  redirect(nextPath(form.get('_next')))
}
