import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { CreateDay } from '@/shared/forms/day'
import { ok } from '@/shared/result/result'
import { checkDayInput } from './check-day-input'

/** Puts a canning day into the calendar, as a draft. */
export const createDay = defineCommand({
  name: 'create-day',
  summary: 'Plan a canning day',
  act: 'edit-day',
  schema: CreateDay,
  async run({ tx, actor: { groupId }, now }, input) {
    const checked = await checkDayInput(tx, groupId, input, now)
    if (!checked.ok) return checked

    const id = randomUUID()
    await tx.day.create({ data: { groupId, id, ...checked.value } })
    return ok({ reply: { dayId: id }, history: [{ subject: `day ${id}`, detail: input, dayId: id }] })
  },
})
