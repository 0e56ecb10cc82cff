import type { Refusal } from './refusal'

/** The same words for an unknown address and for a wrong password: nobody learns who has an account. */
export const noFit = (): Refusal => ({
  code: 'sign-in-does-not-fit',
  status: 401,
  what: 'Not signed in.',
  why: 'This address and this password do not belong together.',
  instead: 'Type both once more, or have a link mailed to you.',
})

/** Too many tries for one address or from one place. */
export const tooManyTries = (): Refusal => ({
  code: 'too-many-tries',
  status: 429,
  what: 'Not now: too many tries.',
  why: 'So that nobody can guess passwords here.',
  instead: 'Wait one minute and try again.',
})

/** A mailed link that was opened too late or twice. */
export const linkIsOver = (): Refusal => ({
  code: 'link-is-over',
  status: 410,
  what: 'Not signed in: this link is over.',
  why: 'A mailed link works once, and for 15 minutes.',
  instead: 'Have a new one mailed to you.',
})

/** The mail server did not take it. */
export const linkNotMailed = (): Refusal => ({
  code: 'link-not-mailed',
  status: 503,
  what: 'No link mailed.',
  why: 'Our mail did not go out.',
  instead: 'Wait a minute and try again, or sign in with your password.',
})

/** The address has an account, so no second one is made. */
export const addressInUse = (): Refusal => ({
  code: 'address-in-use',
  status: 409,
  what: 'No account made: this address cannot be used for a new one.',
  why: 'An address belongs to one account.',
  instead: 'If it is yours, sign in, or have a link mailed to you. Otherwise use another address.',
})

/** The request did not get through. */
export const noConnection = (): Refusal => ({
  code: 'no-connection',
  status: 503,
  what: 'Not signed in: no answer.',
  why: 'The request did not reach the server, or its answer got lost.',
  instead: 'Look whether you are connected and try again.',
})

/** What next-auth says in its address line after it sent somebody back to the sign-in page. */
export function signInProblem(code: string | undefined): Refusal | null {
  if (!code) return null
  if (code === 'CredentialsSignin') return noFit()
  if (code === 'too-many-tries') return tooManyTries()
  return {
    code: 'sign-in-failed',
    status: 503,
    what: 'Not signed in.',
    why: 'The sign-in broke off on our side.',
    instead: 'Wait a few seconds and try again.',
  }
}
