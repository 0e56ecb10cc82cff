'use server'

import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_forms/form-state'
import { currentUser } from '@/lib/auth/current-actor'
import { answerVisitorForm } from '@/lib/http/answer-visitor-form'
import { acceptInvite } from '@/lib/services/account/accept-invite'
import { AcceptInvite } from '@/shared/forms/invite'
import { signInFirst } from '@/shared/wording/refusal'

/** Joins the group and goes to it. */
export async function acceptInviteAction(_: FormState, form: FormData): Promise<FormState> {
  const user = await currentUser()
  if (!user) return { refusal: signInFirst() }
  const answer = await answerVisitorForm(form, {
    schema: AcceptInvite,
    userId: user.userId,
    secrets: ['token'],
    run: (typed, key) => acceptInvite(user, typed, key),
  })
  if ('refusal' in answer) return answer

  redirect(`/g/${answer.done.reply.groupId}`)
}
