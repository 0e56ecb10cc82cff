import 'server-only'
import { randomUUID } from 'node:crypto'
import type { SignedIn } from '@/lib/auth/current-actor'
import { type Answer, answerOnce } from '@/lib/commands/answer-once'
import { appendHistory } from '@/lib/commands/append-history'
import type { CreateGroup } from '@/shared/forms/group'
import { ok, type Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'

/** Makes a group with its founder's household and the founder as its organiser. */
export async function createGroup(user: SignedIn, input: CreateGroup, key: string, now = new Date()): Promise<Result<Answer, Refusal>> {
  return answerOnce({ key, by: user.userId, command: 'create-group', body: input }, async (tx) => {
    const [groupId, householdId, personId] = [randomUUID(), randomUUID(), randomUUID()]
    const { personName, householdName, headcount, ...group } = input
    await tx.group.create({ data: { id: groupId, ...group } })
    await tx.household.create({ data: { groupId, id: householdId, name: householdName, headcount } })
    await tx.person.create({
      data: { groupId, id: personId, householdId, userId: user.userId, name: personName, role: 'organiser', skills: ['organiser'] },
    })
    const entry = { groupId, command: 'create-group', subject: `group ${groupId}`, detail: { ...input, householdId, personId } }
    await appendHistory(tx, [{ ...entry, actorId: user.userId, actorName: personName, recordedAt: now }])
    return ok({ groupId, householdId, personId })
  })
}
