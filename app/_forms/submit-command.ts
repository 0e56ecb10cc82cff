'use server'

import { redirect } from 'next/navigation'
import { answerForm } from '@/lib/http/answer-form'
import type { FormState } from './form-state'

/** The one action behind every form of a group. `_command`, `_group`, `_key` and `_next` say what, where, which tap and where to go on. */
export async function submitCommand(_: FormState, form: FormData): Promise<FormState> {
  const answer = await answerForm(form)
  if ('refusal' in answer) return answer

  redirect(answer.next)
}
