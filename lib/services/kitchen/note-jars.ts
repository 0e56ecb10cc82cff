import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockHousehold } from '@/lib/stores/lock-rows'
import { NoteJars } from '@/shared/forms/jar-ledger'
import { ok, refuse } from '@/shared/result/result'
import { dateIn } from '@/shared/time/calendar-date'
import { badInput, notFound } from '@/shared/wording/refusal'
import { lastPossibleDate } from './last-date-anywhere'

/** Enters jars that went from a household to the group or back. */
export const noteJars = defineCommand({
  name: 'note-jars',
  summary: 'Enter jars that moved',
  act: 'edit-stock',
  schema: NoteJars,
  async run({ tx, actor: { groupId, name: by }, now }, { movedOn, ...input }) {
    if (!(await lockHousehold(tx, groupId, input.householdId))) return refuse(notFound('Household'))
    const last = await lastPossibleDate(tx, groupId, now)
    if (movedOn && movedOn > last) return refuse(badInput({ movedOn: ['That date has not come yet.'] }))
    const { timeZone } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { timeZone: true } })
    const on = movedOn ?? dateIn(timeZone, now)

    const id = randomUUID()
    await tx.jarMovement.create({ data: { groupId, id, ...input, movedOn: new Date(`${on}T00:00:00Z`), by } })
    return ok({ reply: { movementId: id }, history: [{ subject: `jars ${id}`, detail: { ...input, movedOn: on } }] })
  },
})
