'use server'

import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_forms/form-state'
import { beginSession, endSession } from '@/lib/auth/begin-session'
import { currentUser } from '@/lib/auth/current-actor'
import { answerVisitorForm } from '@/lib/http/answer-visitor-form'
import { fromOurPages } from '@/lib/http/same-origin'
import { setPassword } from '@/lib/services/account/set-password'
import { signOutEverywhere } from '@/lib/services/account/sign-out-everywhere'
import { SetPassword } from '@/shared/forms/sign-in'
import { ok } from '@/shared/result/result'
import { signInFirst } from '@/shared/wording/refusal'

/** Sets a new password, ends every other session and begins a new one here. */
export async function setPasswordAction(_: FormState, form: FormData): Promise<FormState> {
  const user = await currentUser()
  if (!user) return { refusal: signInFirst() }
  const answer = await answerVisitorForm(form, {
    schema: SetPassword,
    userId: user.userId,
    secrets: ['password'],
    run: async ({ password }) => ok(await setPassword(user.userId, password)),
  })
  if ('refusal' in answer) return answer

  await beginSession({ ...user, version: answer.done })
  redirect('/account?saved=password')
}

/** Ends every session of this account. */
export async function signOutEverywhereAction(): Promise<void> {
  const user = await currentUser()
  if (user && fromOurPages(await headers()).ok) {
    await signOutEverywhere(user.userId)
    await endSession()
  }
  redirect('/sign-in')
}
