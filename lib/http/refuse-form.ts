import 'server-only'
import { noteRefusal } from '@/lib/request-state'
import type { Refusal } from '@/shared/wording/refusal'
import type { DecodedForm } from '@/shared/forms/decode-form'

/** What a form is answered that was not saved. */
export interface RefusedForm {
  readonly typed: DecodedForm['typed']
  readonly refusal: Refusal
  readonly key?: string
}

/**
 * Gives a form back with the reason, and the answer the reason's status.
 *
 * While the store is away the form keeps its key: it may have been saved all the same, and sent again it must count once.
 */
export function refuseForm(form: FormData, typed: DecodedForm['typed'], refusal: Refusal): RefusedForm {
  noteRefusal(refusal.status)
  const key = form.get('_key')
  return refusal.status === 503 && typeof key === 'string' ? { typed, refusal, key } : { typed, refusal }
}
