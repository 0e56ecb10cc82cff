import 'server-only'
import { countInWindow } from '@/lib/services/count-in-window'
import { answerCases, sayCasesProblem } from '@/shared/process/answer-cases'
import { badInput, type Refusal } from '@/shared/wording/refusal'
import { clientAddress } from './client-address'
import { problemResponse } from './problem'
import { readJson } from './read-json'

const LOOK_UPS_PER_MINUTE = 60

/** Answers scheduled-process look-ups in bulk, for anybody: a list of cases in, a list of answers in the same order out. Changes nothing. */
export async function answerLookup(request: Request): Promise<Response> {
  const wait = await countInWindow(`look-up:${clientAddress(request.headers.get('x-forwarded-for'))}`, LOOK_UPS_PER_MINUTE, 60)
  if (wait > 0) return problemResponse(TOO_MANY, { 'retry-after': String(wait) })
  const body = await readJson(request)
  if (!body.ok) return problemResponse(notLookedUp(body.problem))
  const answered = answerCases(body.value)
  if (!answered.ok)
    return problemResponse(notLookedUp(badInput({ [answered.problem.case]: [sayCasesProblem(answered.problem)] }), 'Mend that case.'))
  return Response.json(answered.value, { headers: { 'cache-control': 'no-store' } })
}

/** Here nothing is ever saved, and what is sent is a list. */
const notLookedUp = (
  { what, ...refusal }: Refusal,
  instead = 'Send a JSON array of cases with Content-Type application/json.',
): Refusal => ({
  ...refusal,
  what: what.replace(/^Not saved/, 'Not looked up'),
  instead: refusal.status === 413 ? refusal.instead : instead,
})

const TOO_MANY: Refusal = {
  code: 'too-many-requests',
  status: 429,
  what: 'Not looked up: too many requests in a minute.',
  instead: 'Wait a moment, or send up to 500 cases in one request.',
}
