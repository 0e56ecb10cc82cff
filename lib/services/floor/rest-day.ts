import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { RestDay } from '@/shared/forms/floor'
import { dayLife } from '@/shared/lifecycle/day-states'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { lockFloorDay, timeOnDay } from './floor-day'

/** Ends the evening: every canner is empty, every filled jar has been through one or is chilled, and the jars rest until the seal check. */
export const restDay = defineCommand({
  name: 'rest-day',
  summary: 'End the evening and let the jars rest',
  act: 'plan-day',
  schema: RestDay,
  async run(context, { dayId, at, giveUpTheRest }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const when = await timeOnDay(context, day.value, at, { kind: 'end', after: [] })
    if (!when.ok) return when
    const open = await stillOpen(context, dayId, giveUpTheRest === 'yes')
    if (open.length > 0) return refuse(sayFloorProblem({ kind: 'still-open', what: open }))

    const given = await tx.kettleBatch.updateMany({
      where: { groupId, dayId, state: { in: ['planned', 'prepping'] } },
      data: { state: 'abandoned' },
    })
    const moved = dayLife.moveTo('running', 'resting')
    if (!moved.ok) throw new Error('the life of a day has no rest')
    await tx.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { state: moved.value, version: { increment: 1 } } })
    const detail = { state: moved.value, at: formatClock(when.value), batchesGivenUp: given.count }
    return ok({ reply: { dayId, state: moved.value, batchesGivenUp: given.count }, history: [{ subject: `day ${dayId}`, detail, dayId }] })
  },
})

/** What keeps the evening from ending, one sentence a thing. */
async function stillOpen({ tx, actor: { groupId } }: CommandContext, dayId: string, mayGiveUp: boolean): Promise<string[]> {
  const batches = await tx.kettleBatch.findMany({
    where: { groupId, dayId, state: { in: mayGiveUp ? ['cooking', 'filling'] : ['planned', 'prepping', 'cooking', 'filling'] } },
    select: { code: true, state: true },
    orderBy: { code: 'asc' },
  })
  const loads = await tx.cannerLoad.findMany({
    where: { groupId, dayId, state: { notIn: ['planned', 'done', 'failed'] } },
    select: { code: true, state: true },
    orderBy: { code: 'asc' },
  })
  const waiting = await tx.jar.count({ where: { groupId, dayId, state: 'filled' } })
  return [
    ...batches.map(({ code, state }) => `Batch ${code} is ${state}`),
    ...loads.map(({ code, state }) => `Load ${code} is ${state.replaceAll('-', ' ')}`),
    ...(waiting > 0 && loads.length === 0
      ? [`${waiting} filled ${waiting === 1 ? 'jar has' : 'jars have'} no process: load them, chill them or throw them out`]
      : []),
  ]
}
