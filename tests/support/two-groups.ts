import { randomUUID } from 'node:crypto'
import type { Answer } from '@/lib/commands/answer-once'
import { runCommand } from '@/lib/commands/run-command'
import type { PrismaClient } from '@/lib/db/generated/client'
import { commandNamed } from '@/lib/services/all-commands'
import { type Actor, ROLES, type Role } from '@/shared/access/actor'
import type { Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'

/** One group with the household "Ash" of its organiser and the household "Birch" of everybody else. */
export interface TestGroup {
  readonly groupId: string
  readonly ash: string
  readonly birch: string
  /** Somebody of each role: the organiser in Ash, the others in Birch. */
  readonly as: Readonly<Record<Role, Actor>>
}

/** Makes a group with a person of each role. The name makes ids and addresses differ between groups. */
export async function makeGroup(client: PrismaClient, name: string): Promise<TestGroup> {
  const groupId = `group-${name}`
  const [ash, birch] = [`${name}-ash`, `${name}-birch`]
  await client.group.create({ data: { id: groupId, name, code: 'AB', timeZone: 'America/New_York', askLine: 'Ask at the hall' } })
  await client.household.createMany({ data: [ash, birch].map((id, place) => ({ groupId, id, name: place === 0 ? 'Ash' : 'Birch' })) })
  const people = ROLES.map((role) => {
    const [userId, personId] = [`${name}-user-${role}`, `${name}-${role}`]
    return { userId, personId, groupId, householdId: role === 'organiser' ? ash : birch, name: `The ${role}`, role }
  })
  await client.user.createMany({ data: people.map(({ userId }) => ({ id: userId, email: `${userId}@example.org` })) })
  await client.person.createMany({ data: people.map(({ personId, ...person }) => ({ ...person, id: personId })) })
  return { groupId, ash, birch, as: Object.fromEntries(people.map((person) => [person.role, person])) as Record<Role, Actor> }
}

/** Sends one change as somebody, with a fresh key unless one is given. */
export function send(actor: Actor, name: string, input: unknown, idempotencyKey: string = randomUUID()): Promise<Result<Answer, Refusal>> {
  const command = commandNamed(name)
  if (!command) throw new Error(`no command is called ${name}`)
  return runCommand(command, { actor, idempotencyKey, input })
}

/** Sends a change that the test takes for granted, and gives its reply. */
export async function done(actor: Actor, name: string, input: unknown): Promise<Record<string, unknown>> {
  const answer = await send(actor, name, input)
  if (!answer.ok) throw new Error(`${name} was refused: ${JSON.stringify(answer.problem)}`)
  return { ...answer.value.reply }
}

/** The refusal's status and code, or "saved": short enough to compare many at once. */
export const outcome = (answer: Result<unknown, Refusal>): string =>
  answer.ok ? 'saved' : `${answer.problem.status} ${answer.problem.code}`
