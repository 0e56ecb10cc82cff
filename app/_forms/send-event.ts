import { decodeForm } from '@/shared/forms/decode-form'
import { notSaved, type Refusal } from '@/shared/wording/refusal'
import type { FormState } from './form-state'

const LONGEST_WAIT_MS = 10_000

/** What is noted of a day's floor: with script these go to `/api/v1`, where a lost answer is told from a refusal. */
const EVENTS: ReadonlySet<string> = new Set([
  'receive-ingredients',
  'start-batch',
  'start-filling',
  'fill-batch',
  'abandon-batch',
  'set-jars-aside',
  'load-canner',
  'reached-temperature',
  'lost-temperature',
  'finish-process',
  'empty-canner',
  'relieve-operator',
  'fail-load',
  'note-broken-jar',
  'note-incident',
  'check-seals',
  'rest-day',
])

/** Where the events of this day go; null for a change that is no event of a day. */
export const eventAddress = (command: string, groupId: string, dayId: string | number | undefined): string | null =>
  EVENTS.has(command) && dayId ? `/api/v1/groups/${encodeURIComponent(groupId)}/days/${encodeURIComponent(dayId)}/events` : null

/** Sends one event. Null when it is saved; otherwise what the form shows. The same key sent again is the same tap. */
export async function sendEvent(address: string, type: string, form: FormData): Promise<FormState | null> {
  const key = String(form.get('_key') ?? '')
  const { input, typed } = decodeForm(form)
  const { dayId: _, ...fields } = input
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': key },
      body: JSON.stringify({ type, ...fields }),
      signal: AbortSignal.timeout(LONGEST_WAIT_MS),
    })
    if (response.ok) return null
    return { typed, key, refusal: await refusalOf(response) }
  } catch {
    return { typed, key, refusal: notSaved(true) }
  }
}

/** The problem details of an answer, as a refusal. */
async function refusalOf(response: Response): Promise<Refusal> {
  const problem = (await response.json()) as {
    type?: string
    title?: string
    detail?: string
    instead?: string
    fields?: Refusal['fields']
  }
  return {
    code: problem.type?.replace('/problems/', '') ?? 'not-saved',
    status: response.status as Refusal['status'],
    what: problem.title ?? 'Not saved.',
    why: problem.detail,
    instead: problem.instead ?? 'Load the page again.',
    fields: problem.fields,
  }
}
