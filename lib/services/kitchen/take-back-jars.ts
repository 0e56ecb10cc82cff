import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { TakeBackJars } from '@/shared/forms/jar-ledger'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'

/** Takes an entry of the jar ledger back by a new one that names it: nothing is struck out. */
export const takeBackJars = defineCommand({
  name: 'take-back-jars',
  summary: 'Take the entry back',
  act: 'edit-stock',
  schema: TakeBackJars,
  async run({ tx, actor: { groupId, name: by } }, { movementId, note }) {
    const entry = await tx.jarMovement.findUnique({ where: { groupId_id: { groupId, id: movementId } } })
    if (!entry || entry.corrects !== null) return refuse(notFound('Entry'))
    const twin = await tx.jarMovement.findUnique({ where: { groupId_corrects: { groupId, corrects: movementId } }, select: { id: true } })
    if (twin) return refuse(TAKEN_BACK)

    const id = randomUUID()
    const { createdAt: _, ...same } = entry
    await tx.jarMovement.create({ data: { ...same, id, by, note, corrects: movementId } })
    return ok({ reply: { movementId: id }, history: [{ subject: `jars ${id}`, detail: { corrects: movementId, note } }] })
  },
})

const TAKEN_BACK = notNow(
  'taken-back',
  'This entry was taken back already.',
  'The ledger shows both.',
  'Enter the right number as a new line.',
)
