import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { operatorProblem } from '@/shared/floor/check-loading'
import { RelieveOperator } from '@/shared/forms/floor'
import type { Method } from '@/shared/kitchen/methods'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notFound, notNow } from '@/shared/wording/refusal'
import { lockFloorDay, timeOnDay } from './floor-day'
import { operatorFor } from './load-people-and-canner'
import { readLoad } from './one-load'

/**
 * Somebody else takes a canner over while a load is in it. One entry names both, so a canner is never without a trained operator in between;
 * from then on the load is the new one's, and its jars are traced to both.
 */
export const relieveOperator = defineCommand({
  name: 'relieve-operator',
  summary: 'Take a canner over',
  act: 'run-load',
  schema: RelieveOperator,
  async run(context, { dayId, loadId, operatorId, at }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const load = await readLoad(context, dayId, loadId)
    const next = await operatorFor(context, operatorId)
    if (!load || !next) return refuse(notFound(load ? 'Operator' : 'Canner load'))
    const where = { groupId_id: { groupId, id: loadId } }
    const minded = await tx.cannerLoad.findUniqueOrThrow({
      where,
      select: {
        canner: { select: { method: true } },
        operator: { select: { id: true, name: true } },
        reliefs: { orderBy: { turn: 'desc' }, take: 1, select: { at: true, turn: true } },
      },
    })
    const { operator } = minded
    if (!operator || !IN_CANNER.has(load.state)) return refuse(notInCanner(load.code))
    if (operator.id === next.id) return refuse(mindsAlready(next.name))
    const problem = operatorProblem(minded.canner.method as Method, next)
    if (problem) return refuse(sayFloorProblem({ ...problem, isRelief: true }))
    const [last] = minded.reliefs
    const when = await timeOnDay(context, day.value, at, {
      kind: 'end',
      after: [
        { what: 'loading', at: load.loadedAt },
        { what: 'the last change of operator', at: last?.at ?? null },
      ],
    })
    if (!when.ok) return when

    const people = { fromId: operator.id, toId: next.id }
    await tx.operatorRelief.create({ data: { groupId, id: randomUUID(), loadId, ...people, at: when.value, turn: (last?.turn ?? 0) + 1 } })
    await tx.cannerLoad.update({ where, data: { operatorId: next.id } })
    const detail = { code: load.code, at: formatClock(when.value), from: operator.name, to: next.name }
    return ok({ reply: { loadId, code: load.code, operator: next.name }, history: [{ subject: `canner load ${loadId}`, detail, dayId }] })
  },
})

const IN_CANNER: ReadonlySet<string> = new Set(['loading', 'coming-up', 'processing', 'cooling-down'])

const mindsAlready = (name: string) =>
  notNow(
    'minds-already',
    `Not taken over: ${name} minds it already.`,
    'Nobody takes a canner over from themselves.',
    'Choose somebody else.',
  )

const notInCanner = (code: string) =>
  notNow(
    'not-in-canner',
    `Not taken over: load ${code} is in no canner.`,
    'Somebody is relieved while a load is in the canner.',
    'Choose who minds it when you load it.',
  )
