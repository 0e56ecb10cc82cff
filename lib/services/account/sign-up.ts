import 'server-only'
import { randomUUID } from 'node:crypto'
import { hashPassword } from '@/lib/auth/password'
import { type Answer, answerOnce } from '@/lib/commands/answer-once'
import type { SignUp } from '@/shared/forms/sign-in'
import { ok, type Result, refuse } from '@/shared/result/result'
import { addressInUse } from '@/shared/wording/account'
import type { Refusal } from '@/shared/wording/refusal'

/** Makes an account. It belongs to no group until somebody makes one or takes up an invitation. */
export async function signUp({ name, email, password }: SignUp, key: string): Promise<Result<Answer, Refusal>> {
  // Hashed outside the transaction: it takes a while.
  const passwordHash = await hashPassword(password)
  return answerOnce({ key, by: 'nobody yet', command: 'sign-up', body: { name, email } }, async (tx) => {
    if (await tx.user.findUnique({ where: { email }, select: { id: true } })) return refuse(addressInUse())
    const { id } = await tx.user.create({ data: { id: randomUUID(), name, email, passwordHash }, select: { id: true } })
    return ok({ userId: id })
  })
}
