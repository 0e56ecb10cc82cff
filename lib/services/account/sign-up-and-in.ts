import 'server-only'
import type { NewSession } from '@/lib/auth/begin-session'
import { checkSignIn } from '@/lib/auth/check-sign-in'
import type { SignUp } from '@/shared/forms/sign-in'
import { ok, type Result, refuse } from '@/shared/result/result'
import { addressInUse, tooManyTries } from '@/shared/wording/account'
import type { Refusal } from '@/shared/wording/refusal'
import { signUp } from './sign-up'

/**
 * Makes an account and checks the password against it, so that nobody gets a session by repeating somebody's form.
 *
 * @param from - where the request comes from: tries are counted by it
 */
export async function signUpAndIn(input: SignUp, key: string, from: string): Promise<Result<NewSession, Refusal>> {
  const made = await signUp(input, key)
  if (!made.ok) return made
  const check = await checkSignIn({ email: input.email, password: input.password }, from)
  if (check.kind === 'fits') return ok(check.session)
  return refuse(check.kind === 'too-many-tries' ? tooManyTries() : addressInUse())
}
