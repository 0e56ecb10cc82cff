import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { checkLoading } from '@/shared/floor/check-loading'
import { startLoad } from '@/shared/floor/process-clock'
import { LoadCanner } from '@/shared/forms/floor'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import { type FloorDay, lockFloorDay, timeOnDay } from './floor-day'
import { cannerFor, operatorFor } from './load-people-and-canner'
import { type FloorLoad, readLoad, saveClock } from './one-load'
import { checkKeeping, giveLots, processOf, takeWaiting } from './waiting-jars'

/**
 * Puts filled jars into a canner. The process is looked up again, for the canner that is really used and this kitchen's elevation, and is written with
 * row, edition, minutes and source; no clock starts before the boil or the pressure.
 */
export const loadCanner = defineCommand({
  name: 'load-canner',
  summary: 'Load a canner',
  act: 'run-load',
  schema: LoadCanner,
  async run(context, input) {
    const day = await lockFloorDay(context, input.dayId, ['running'])
    if (!day.ok) return day
    const found = input.loadId ? await readLoad(context, input.dayId, input.loadId) : await newLoad(context, day.value, input)
    if (found === null) return refuse(notFound('Canner load'))
    if ('status' in found) return refuse(found)
    const canner = await cannerFor(context, day.value, input.cannerId ?? found.cannerId)
    const operator = await operatorFor(context, input.operatorId ?? context.actor.personId)
    if (!canner || !operator) return refuse(notFound(canner ? 'Operator' : 'Canner'))
    const waiting = await takeWaiting(context, input)
    if (!waiting.ok) return waiting
    const process = processOf(day.value, canner, waiting.value)
    if (!process.ok) return refuse(sayFloorProblem(process.problem))
    const fits = checkLoading(process.value.waiting, canner, operator)
    if (!fits.ok) return refuse(sayFloorProblem(fits.problem))
    const after = waiting.value.map((batch) => ({ what: `the filling of ${batch.code}`, at: batch.filledAt }))
    const when = await timeOnDay(context, day.value, input.at, {
      kind: 'begin',
      after: [...after, { what: 'the emptying of the canner', at: canner.emptiedAt }],
    })
    if (!when.ok) return when
    const kept = checkKeeping(waiting.value, when.value)
    if (!kept.ok) return kept
    const clock = startLoad(found, when.value, process.value.minutes)
    if (!clock.ok) return refuse(sayFloorProblem(clock.problem))

    const { rowKey, edition, minutes, psi, source } = process.value
    const saved = { cannerId: canner.id, operatorId: operator.id, note: input.note, processRowKey: rowKey, processEdition: edition }
    const where = { groupId_id: { groupId: context.actor.groupId, id: found.id } }
    const unplanned = input.loadId ? {} : { plannedLoadAt: when.value, plannedEmptyAt: when.value + minutes }
    await context.tx.cannerLoad.update({ where, data: { ...saved, ...unplanned, processPsi: psi, processSource: source } })
    await saveClock(context, found.id, clock.value)
    const lots = await giveLots(context, day.value, found, waiting.value)
    const jars = waiting.value.flatMap((batch) => batch.jars.map((jar) => jar.shortName))
    const about = {
      code: found.code,
      canner: canner.label,
      operator: operator.name,
      at: formatClock(when.value),
      minutes,
      psi,
      rowKey,
      edition,
      source,
    }
    return ok({
      reply: { loadId: found.id, code: found.code, state: clock.value.state, minutes, psi, source, jars: jars.length, lots },
      history: [{ subject: `canner load ${found.id}`, detail: { ...about, jars, lots, note: input.note }, dayId: input.dayId }],
    })
  },
})

/** A load that the plan does not have, such as a second process: the next free code, in the canner that was chosen. */
async function newLoad({ tx, actor: { groupId } }: CommandContext, day: FloorDay, { cannerId }: LoadCanner): Promise<FloorLoad | Refusal> {
  if (!cannerId) return badInput({ cannerId: ['Which canner?'] })
  const known = await tx.canner.findFirst({ where: { groupId, id: cannerId, kitchenId: day.kitchenId }, select: { id: true } })
  if (!known) return notFound('Canner')
  const codes = await tx.cannerLoad.findMany({ where: { groupId, dayId: day.id }, select: { code: true } })
  const number = Math.max(0, ...codes.map(({ code }) => Number(code.slice(1)) || 0)) + 1
  const load = { id: randomUUID(), code: `L${String(number).padStart(2, '0')}`, cannerId, state: 'planned' as const }
  await tx.cannerLoad.create({ data: { groupId, dayId: day.id, plannedLoadAt: day.accessAt, plannedEmptyAt: day.accessAt, ...load } })
  const nothing = {
    processMinutes: null,
    loadedAt: null,
    atTemperatureAt: null,
    temperatureLostAt: null,
    processedAt: null,
    emptiedAt: null,
  }
  return { ...load, ...nothing, restarts: 0 }
}
