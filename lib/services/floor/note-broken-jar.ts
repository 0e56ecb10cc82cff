import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { dateOf } from '@/shared/floor/date-and-clock'
import { NoteBrokenJar } from '@/shared/forms/floor'
import { jarLife, type JarState } from '@/shared/lifecycle/jar-states'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound } from '@/shared/wording/refusal'
import { lockFloorDay, timeAfterDay, timeOnDay } from './floor-day'

/** Notes a jar that broke with food in it, where, and where the crack begins: the pattern tells which step to mend. */
export const noteBrokenJar = defineCommand({
  name: 'note-broken-jar',
  summary: 'Note a broken jar',
  act: 'note-jar',
  schema: NoteBrokenJar,
  async run(context, { dayId, jarId, at, on, how, where }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running', 'resting'])
    if (!day.ok) return day
    const jar = await tx.jar.findFirst({ where: { groupId, id: jarId, dayId }, select: { shortName: true, state: true, filledAt: true } })
    if (!jar) return refuse(notFound('Jar'))
    const after = [{ what: 'its filling', at: jar.filledAt }]
    const { now } = context
    if (on && at === undefined) return refuse(badInput({ at: ['At what time?'] }))
    const when =
      on && at !== undefined
        ? timeAfterDay(day.value, { on, at, after, now })
        : await timeOnDay(context, day.value, at, { kind: 'end', after })
    if (!when.ok) return when
    const { shortName: name, state } = jar
    if (!jarLife.mayMove(state as JarState, 'broken')) {
      return refuse(sayFloorProblem({ kind: 'wrong-state', of: jarLife.of, name, state, to: 'broken' }))
    }

    await tx.jar.update({ where: { groupId_id: { groupId, id: jarId } }, data: { state: 'broken', whereNow: `broke: ${where}` } })
    const detail = { jar: name, on: dateOf(when.value, day.value.date), at: formatClock(when.value), from: state, how, where }
    return ok({ reply: { jarId, jar: name, state: 'broken' }, history: [{ subject: `jar ${jarId}`, detail, dayId }] })
  },
})
