import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { NoteIncident } from '@/shared/forms/floor'
import { ok } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { lockFloorDay, timeOnDay } from './floor-day'

/** Writes an injury, a near miss or a spill into the day's book. */
export const noteIncident = defineCommand({
  name: 'note-incident',
  summary: 'Note an incident',
  act: 'note-incident',
  schema: NoteIncident,
  async run(context, { dayId, at, what, action }) {
    const day = await lockFloorDay(context, dayId, ['running', 'resting'])
    if (!day.ok) return day
    const when = await timeOnDay(context, day.value, at, { kind: 'end', after: [] })
    if (!when.ok) return when

    const id = randomUUID()
    await context.tx.incident.create({ data: { groupId: context.actor.groupId, id, dayId, at: when.value, what, action } })
    const detail = { at: formatClock(when.value), what, action }
    return ok({ reply: { incidentId: id }, history: [{ subject: `incident ${id}`, detail, dayId }] })
  },
})
