import { problemResponse } from '@/lib/http/problem'
import { notFound } from '@/shared/wording/refusal'

/** Whatever else is asked of the API: a problem in JSON, as its callers expect. */
const answer = (): Response => problemResponse(notFound('Address'))

export { answer as DELETE, answer as GET, answer as HEAD, answer as OPTIONS, answer as PATCH, answer as POST, answer as PUT }
