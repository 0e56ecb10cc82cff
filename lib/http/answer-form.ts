import 'server-only'
import { headers } from 'next/headers'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { runCommand } from '@/lib/commands/run-command'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { commandNamed } from '@/lib/services/all-commands'
import { Id } from '@/shared/forms/fields'
import { notFound, notSaved, type Refusal, signInFirst } from '@/shared/wording/refusal'
import { decodeForm } from '@/shared/forms/decode-form'
import { guardAction } from './guard-action'
import { localPath } from './local-path'
import { type RefusedForm, refuseForm } from './refuse-form'

/** Saved and where to go on, or not saved with what was typed and why. */
export type FormAnswer = { next: string } | RefusedForm

/** Answers one posted form: who, what, do, answer. When the store does not answer, the form says "not saved" and keeps what was typed. */
export async function answerForm(form: FormData): Promise<FormAnswer> {
  const { input, typed } = decodeForm(form)
  try {
    const done = await carryOut(form, input)
    return 'refusal' in done ? refuseForm(form, typed, done.refusal) : done
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return refuseForm(form, typed, notSaved(error.isOutcomeUnknown))
    throw error
  }
}

async function carryOut(form: FormData, input: Record<string, unknown>): Promise<{ next: string } | { refusal: Refusal }> {
  const group = Id.safeParse(form.get('_group'))
  const actor = group.success ? await currentActor(group.data) : null
  if (!actor) return { refusal: (await currentUser()) ? notFound('Group') : signInFirst() }
  const command = commandNamed(String(form.get('_command') ?? ''))
  if (!command) return { refusal: notFound('This form') }
  const stopped = await guardAction(await headers(), actor.userId)
  if (stopped) return { refusal: stopped }

  const done = await runCommand(command, { actor, idempotencyKey: String(form.get('_key') ?? ''), input })
  if (!done.ok) return { refusal: done.problem }
  return { next: localPath(String(form.get('_next') ?? ''), done.value.reply, `/g/${actor.groupId}`) }
}
