import 'server-only'
import { headers } from 'next/headers'
import type { z } from 'zod'
import { fieldsOf, IdempotencyKey } from '@/lib/commands/run-command'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import type { Result } from '@/shared/result/result'
import { badInput, notSaved, type Refusal } from '@/shared/wording/refusal'
import { clientAddress } from './client-address'
import { decodeForm } from '@/shared/forms/decode-form'
import { guardAction } from './guard-action'
import { type RefusedForm, refuseForm } from './refuse-form'

interface VisitorForm<Input, Done> {
  readonly schema: z.ZodType<Input>
  /** Whose changes are counted: an account's id; left out for somebody without one, who is counted by where they come from. */
  readonly userId?: string
  /** Entries that never come back to the page. */
  readonly secrets?: readonly string[]
  readonly run: (input: Input, key: string) => Promise<Result<Done, Refusal>>
}

export type VisitorAnswer<Done> = { readonly done: Done } | RefusedForm

/** Answers one posted form of somebody who is not acting in a group: from our own page, not too fast, strictly parsed, then done. */
export async function answerVisitorForm<Input, Done>(form: FormData, visitor: VisitorForm<Input, Done>): Promise<VisitorAnswer<Done>> {
  const { input, typed } = decodeForm(form)
  const shown = Object.fromEntries(Object.entries(typed).filter(([name]) => !visitor.secrets?.includes(name)))
  try {
    const done = await carryOut(form, input, visitor)
    return done.ok ? { done: done.value } : refuseForm(form, shown, done.problem)
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return refuseForm(form, shown, notSaved(error.isOutcomeUnknown))
    throw error
  }
}

async function carryOut<Input, Done>(
  form: FormData,
  input: unknown,
  { schema, userId, run }: VisitorForm<Input, Done>,
): Promise<Result<Done, Refusal>> {
  const sent = await headers()
  const stopped = await guardAction(sent, userId ?? `from ${clientAddress(sent.get('x-forwarded-for'))}`)
  if (stopped) return { ok: false, problem: stopped }
  const key = IdempotencyKey.safeParse(form.get('_key'))
  if (!key.success) return { ok: false, problem: badInput({ _key: ['Load the page again and enter it once more.'] }) }
  const read = schema.safeParse(input)
  return read.success ? run(read.data, key.data) : { ok: false, problem: badInput(fieldsOf(read.error)) }
}
