import 'server-only'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import type { CsvFile } from '@/lib/print/csv-file'
import { BYTE_ORDER_MARK } from '@/lib/print/write-csv'
import type { Actor } from '@/shared/access/actor'
import { type Act, may } from '@/shared/access/policy'
import { notFound, notSaved, signInFirst } from '@/shared/wording/refusal'
import { problemResponse } from './problem'

/** Answers a request for a CSV file of a group: who asks, may they, write it. What may not be seen is not found. */
export async function answerFile(
  groupId: string,
  act: Act,
  thing: string,
  write: (actor: Actor) => Promise<CsvFile | null>,
): Promise<Response> {
  try {
    const actor = await currentActor(groupId)
    if (!actor) return problemResponse((await currentUser()) ? notFound('Group') : signInFirst())
    const file = may(actor, act) ? await write(actor) : null
    if (!file) return problemResponse(notFound(thing))
    return new Response(BYTE_ORDER_MARK + file.text, {
      headers: {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': `attachment; filename="${file.name}"`,
        'cache-control': 'private, no-store',
      },
    })
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return problemResponse(notSaved())
    throw error
  }
}
