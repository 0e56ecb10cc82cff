'use server'

import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { currentActor } from '@/lib/auth/current-actor'
import { runCommand } from '@/lib/commands/run-command'
import { decodeForm } from '@/lib/http/decode-form'
import { guardAction } from '@/lib/http/guard-action'
import { localPath } from '@/lib/http/local-path'
import { commandNamed } from '@/lib/services/all-commands'
import { notFound, signInFirst } from '@/shared/wording/refusal'
import type { FormState } from './form-state'

/** The one action behind every form of a group. `_command`, `_group`, `_key` and `_next` say what, where, which tap and where to go on. */
export async function submitCommand(_: FormState, form: FormData): Promise<FormState> {
  const { input, typed } = decodeForm(form)
  const groupId = String(form.get('_group') ?? '')
  const command = commandNamed(String(form.get('_command') ?? ''))
  const actor = await currentActor(groupId)
  if (!actor) return { typed, refusal: signInFirst() }
  if (!command) return { typed, refusal: notFound('This form') }
  const stopped = await guardAction(await headers(), actor.userId)
  if (stopped) return { typed, refusal: stopped }

  const done = await runCommand(command, { actor, idempotencyKey: String(form.get('_key') ?? ''), input })
  if (!done.ok) return { typed, refusal: done.problem }

  redirect(localPath(String(form.get('_next') ?? ''), done.value.reply, `/g/${groupId}`))
}
