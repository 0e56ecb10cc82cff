'use server'

import { redirect } from 'next/navigation'
import type { FormState } from '@/app/_forms/form-state'
import { currentUser } from '@/lib/auth/current-actor'
import { answerVisitorForm } from '@/lib/http/answer-visitor-form'
import { createGroup } from '@/lib/services/account/create-group'
import { CreateGroup } from '@/shared/forms/group'
import { signInFirst } from '@/shared/wording/refusal'

/** Makes the group and goes to it. */
export async function createGroupAction(_: FormState, form: FormData): Promise<FormState> {
  const user = await currentUser()
  if (!user) return { refusal: signInFirst() }
  const answer = await answerVisitorForm(form, {
    schema: CreateGroup,
    userId: user.userId,
    run: (typed, key) => createGroup(user, typed, key),
  })
  if ('refusal' in answer) return answer

  redirect(`/g/${answer.done.reply.groupId}`)
}
