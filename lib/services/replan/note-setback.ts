import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { dayClock } from '@/lib/queries/day-clock'
import { type FloorDay, lockFloorDay } from '@/lib/services/floor/floor-day'
import { placeOnDay } from '@/shared/floor/floor-clock'
import { NoteSetback } from '@/shared/forms/replan'
import { ok, type Result, refuse } from '@/shared/result/result'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import { momentAfterPlan } from './order-of-plans'

/** Writes down that something is not as the plan took it to be. The plan stays until somebody plans again. */
export const noteSetback = defineCommand({
  name: 'note-setback',
  summary: 'Note what has changed',
  act: 'note-incident',
  schema: NoteSetback,
  async run(context, input) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, input.dayId, ['running'])
    if (!day.ok) return day
    const found = await nameOf(context, day.value, input)
    if (found === null) return refuse(notFound('What has changed'))
    const clock = Math.floor(await dayClock(tx, groupId, day.value, now))
    const when = timesOf(input, day.value, clock)
    if (!when.ok) return when

    const id = randomUUID()
    const { kind, dayId, note } = input
    const about = {
      cannerId: kind === 'canner-out' ? input.cannerId : null,
      personId: kind === 'person-away' || kind === 'person-late' ? input.personId : null,
      preparationId: kind === 'produce-late' || kind === 'produce-short' ? input.preparationId : null,
      batches: kind === 'produce-short' ? input.batches : null,
    }
    const notedAt = await momentAfterPlan(tx, groupId, dayId, now)
    await tx.setback.create({ data: { groupId, id, dayId, kind, note, notedAt, ...about, ...when.value } })
    const { fromAt, untilAt } = when.value
    const said = { from: fromAt === null ? null : formatClock(fromAt), until: untilAt === null ? null : formatClock(untilAt) }
    return ok({
      reply: { setbackId: id, kind },
      history: [{ subject: `setback ${id}`, detail: { kind, of: found, ...said, batches: about.batches, note }, dayId }],
    })
  },
})

/** What it is about, by name; null when the day has no such thing. */
async function nameOf(
  { tx, actor: { groupId } }: CommandContext,
  { id: dayId, kitchenId }: FloorDay,
  input: NoteSetback,
): Promise<string | null> {
  if (input.kind === 'canner-out')
    return (await tx.canner.findFirst({ where: { groupId, kitchenId, id: input.cannerId }, select: { label: true } }))?.label ?? null
  if (input.kind === 'person-away' || input.kind === 'person-late')
    return (await tx.person.findFirst({ where: { groupId, id: input.personId }, select: { name: true } }))?.name ?? null
  return (await tx.preparation.findFirst({ where: { groupId, dayId, id: input.preparationId }, select: { letter: true } }))?.letter ?? null
}

function timesOf(
  input: NoteSetback,
  day: FloorDay,
  now: KitchenTime,
): Result<{ fromAt: KitchenTime | null; untilAt: KitchenTime | null }, Refusal> {
  if (input.kind === 'produce-short') return ok({ fromAt: null, untilAt: null })
  const fromAt = input.from === undefined ? now : placeOnDay(input.from, day)
  if (input.kind !== 'canner-out' || input.until === undefined) return ok({ fromAt, untilAt: null })
  const untilAt = placeOnDay(input.until, day)
  return untilAt >= fromAt ? ok({ fromAt, untilAt }) : refuse(badInput({ until: ['After it went out.'] }))
}
