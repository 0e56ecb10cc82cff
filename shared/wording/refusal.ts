/**
 * A "no" in three parts, as every screen and every door says it: what is refused, why, and what to do instead.
 *
 * `code` is stable and may be used by programs; `status` is the HTTP status of the same answer (RFC 9110).
 */
export interface Refusal {
  readonly code: string
  readonly status: 400 | 401 | 403 | 404 | 409 | 410 | 413 | 422 | 429 | 503
  readonly what: string
  readonly why?: string
  readonly instead: string
  /** Field name to sentences, when the answer belongs to what was typed. */
  readonly fields?: Readonly<Record<string, readonly string[]>>
}

/** What may not be seen is answered like what does not exist. */
export const notFound = (thing: string): Refusal => ({
  code: 'not-found',
  status: 404,
  what: `${thing}: not found.`,
  why: 'It does not exist, or it belongs to others.',
  instead: 'Go back and choose again, or ask the organiser.',
})

/** The person is in the group, but this is not theirs to do. */
export const notAllowed = (what: string, who = 'the organiser'): Refusal => ({
  code: 'not-allowed',
  status: 403,
  what: `${what}: not for your role.`,
  instead: `Ask ${who}.`,
})

/** Nobody is signed in. */
export const signInFirst = (): Refusal => ({
  code: 'sign-in-first',
  status: 401,
  what: 'You are not signed in.',
  instead: 'Sign in and try again. What you typed was not saved.',
})

/** Something typed does not fit; `fields` says which and how. */
export const badInput = (fields: Readonly<Record<string, readonly string[]>>): Refusal => ({
  code: 'bad-input',
  status: 422,
  what: 'Not saved: something does not fit.',
  why: Object.values(fields).flat()[0],
  instead: 'Change what is marked and send it again.',
  fields,
})

/** The thing has moved on, so this cannot be done to it now. */
export const notNow = (code: string, what: string, why: string, instead: string): Refusal => ({ code, status: 409, what, why, instead })

/**
 * The store did not answer.
 *
 * @param isOutcomeUnknown - true when the answer was lost after the save was sent: it may have been kept, and the same key finds out
 */
export const notSaved = (isOutcomeUnknown = false): Refusal =>
  isOutcomeUnknown
    ? {
        code: 'not-sure',
        status: 503,
        what: 'Not sure whether it was saved.',
        why: 'The store did not answer in time.',
        instead: 'Send the same form again in a few seconds: it counts once.',
      }
    : {
        code: 'not-saved',
        status: 503,
        what: 'Not saved.',
        why: 'The store does not answer just now.',
        instead: 'Wait a few seconds and send it again; nothing was half-written.',
      }
