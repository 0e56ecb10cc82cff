import 'server-only'
import type { AsyncLocalStorage } from 'node:async_hooks'
import type { DatabaseUnavailable } from './db/database-unavailable'

/** What is known of the request under way; lib/cli/say-not-saved.mjs puts it there and gives the answer its status by it. */
interface RequestState {
  isDatabaseAway: boolean
  isOutcomeUnknown: boolean
  /** The status of a refusal that a form was answered with. */
  refusedWith: number | undefined
}

const REQUEST = Symbol.for('lidsong.request')

/** Remembers that the database did not answer this request, and gives the error back. Outside a request it only gives it back. */
export function noteDatabaseAway(error: DatabaseUnavailable): DatabaseUnavailable {
  const state = requestState()
  if (state) {
    state.isDatabaseAway = true
    state.isOutcomeUnknown ||= error.isOutcomeUnknown
  }
  return error
}

/** Did the database fail this very request before? Then it is not asked again: two waits would be longer than anybody should. */
export const isDatabaseAway = (): boolean => requestState()?.isDatabaseAway ?? false

/** Remembers that this request is refused: a form's page is drawn again all the same, and its answer carries this status. */
export function noteRefusal(status: number): void {
  const state = requestState()
  if (state) state.refusedWith = status
}

function requestState(): RequestState | undefined {
  const storage: AsyncLocalStorage<RequestState> | undefined = Reflect.get(globalThis, REQUEST)
  return storage?.getStore()
}
