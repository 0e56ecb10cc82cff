import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { readRowKey } from '@/shared/floor/load-process'
import { checkSeal, settleUnsealed, type UnsealedWay } from '@/shared/floor/unsealed-jars'
import { CheckSeals } from '@/shared/forms/floor'
import { jarLife } from '@/shared/lifecycle/jar-states'
import { ok, type Result, refuse } from '@/shared/result/result'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import { takeLids } from './fill-batch'
import { type FloorDay, lockFloorDay, timeAfterDay } from './floor-day'
import { type FloorLoad, readLoad } from './one-load'

/**
 * Notes how the lids of a load were found. Every jar that waits is sealed but those that are named; an unsealed one is chilled, filled again with a
 * new lid for a second process, or thrown out, within the published hours. A lid is called sealed only after 12 hours of cooling.
 */
export const checkSeals = defineCommand({
  name: 'check-seals',
  summary: 'Check the seals',
  act: 'check-seals',
  schema: CheckSeals,
  async run(context, { dayId, loadId, on, at, unsealed, way, ...input }) {
    const day = await lockFloorDay(context, dayId, ['running', 'resting'])
    if (!day.ok) return day
    const load = await readLoad(context, dayId, loadId)
    if (!load) return refuse(notFound('Canner load'))
    const after = [{ what: 'the emptying of the canner', at: load.emptiedAt }]
    const when = timeAfterDay(day.value, { on, at, after, now: context.now })
    if (!when.ok) return when
    const jars = await jarsToCheck(context, loadId, input.jarIds)
    const all = new Set(jars.map(({ id }) => id))
    if (unsealed.some((id) => !all.has(id)) || input.jarIds?.some((id) => !all.has(id)))
      return refuse(notFound('A jar that waits for its check'))
    if (jars.length === 0)
      return refuse(sayFloorProblem({ kind: 'wrong-state', of: 'canner load', name: load.code, state: load.state, to: 'sealed' }))

    const up = jars.filter(({ id }) => unsealed.includes(id))
    const down = jars.filter(({ id }) => !unsealed.includes(id))
    const sealed = await noteSealed(context, load, down, when.value)
    if (!sealed.ok) return sealed
    const settled = await noteUnsealed(context, day.value, { load, jars: up, way, at: when.value, lidLotId: input.lidLotId })
    if (!settled.ok) return settled
    const names = (of: readonly JarToCheck[]) => of.map(({ shortName }) => shortName)
    const detail = { load: load.code, on, at: formatClock(at), sealed: names(down), unsealed: names(up), way: up.length > 0 ? way : null }
    const reply = { loadId, code: load.code, sealed: down.length, unsealed: names(up) }
    return ok({ reply, history: [{ subject: `canner load ${loadId}`, detail, dayId }] })
  },
})

interface JarToCheck {
  readonly id: string
  readonly shortName: string
  readonly seal: string | null
  readonly processRowKey: string
}

async function jarsToCheck(
  { tx, actor: { groupId } }: CommandContext,
  loadId: string,
  only: readonly string[] | undefined,
): Promise<JarToCheck[]> {
  const jars = await tx.jar.findMany({
    where: { groupId, state: 'processed', loads: { some: { loadId } }, ...(only ? { id: { in: [...only] } } : {}) },
    orderBy: { shortName: 'asc' },
    select: { id: true, shortName: true, seal: true, batch: { select: { preparation: { select: { processRowKey: true } } } } },
  })
  return jars.map(({ batch, ...jar }) => ({ ...jar, processRowKey: batch.preparation.processRowKey }))
}

async function noteSealed(
  { tx, actor: { groupId } }: CommandContext,
  load: FloorLoad,
  jars: readonly JarToCheck[],
  at: KitchenTime,
): Promise<Result<number, Refusal>> {
  if (jars.length === 0) return ok(0)
  const cooled = checkSeal(load.emptiedAt ?? at, at)
  if (!cooled.ok) return refuse(sayFloorProblem(cooled.problem))
  const to = jarLife.moveTo('processed', 'sealed')
  if (!to.ok) throw new Error('the life of a jar has no seal')
  const ids = (first: boolean) => jars.filter(({ seal }) => (seal === null) === first).map(({ id }) => id)
  const data = { state: to.value, whereNow: 'store' }
  await tx.jar.updateMany({ where: { groupId, id: { in: ids(true) } }, data: { ...data, seal: 'sealed', sealCheckedAt: at } })
  await tx.jar.updateMany({ where: { groupId, id: { in: ids(false) } }, data })
  return ok(jars.length)
}

const AFTER: Readonly<Record<UnsealedWay, { readonly state: string; readonly whereNow: string }>> = {
  again: { state: 'filled', whereNow: 'waits for a new load' },
  fridge: { state: 'unsealed', whereNow: 'fridge' },
  discard: { state: 'discarded', whereNow: 'thrown out' },
}

interface Unsealed {
  readonly load: FloorLoad
  readonly jars: readonly JarToCheck[]
  readonly way: UnsealedWay
  readonly at: KitchenTime
  readonly lidLotId: string | undefined
}

async function noteUnsealed(
  context: CommandContext,
  day: FloorDay,
  { load, jars, way, at, lidLotId }: Unsealed,
): Promise<Result<true, Refusal>> {
  if (jars.length === 0) return ok(true)
  const { tx, actor } = context
  const { groupId } = actor
  for (const { processRowKey } of jars) {
    const { pack } = readRowKey(processRowKey)
    const settled = settleUnsealed({ pack, wasProcessed: true, since: load.processedAt ?? at }, way, at)
    if (!settled.ok) return refuse(sayFloorProblem(settled.problem))
  }
  if (way === 'again' && day.state !== 'running')
    return refuse(badInput({ way: ['The canners are cold: chill the jar, or throw it out.'] }))
  const newLids = way === 'again' ? await takeLids(context, lidLotId ?? null, jars.length, day.date) : ok(null)
  if (!newLids.ok) return newLids
  if (way === 'again' && day.state !== 'running')
    return refuse(badInput({ way: ['The canners are cold: chill the jar, or throw it out.'] }))
  const ids = jars.map(({ id }) => id)
  const first = jars.filter(({ seal }) => seal === null).map(({ id }) => id)
  await tx.jar.updateMany({ where: { groupId, id: { in: first } }, data: { seal: 'unsealed', sealCheckedAt: at } })
  const lids = way === 'again' ? { lidLotId, lidsUsed: { increment: 1 } } : {}
  await tx.jar.updateMany({ where: { groupId, id: { in: ids } }, data: { ...AFTER[way], ...lids } })
  return ok(true)
}
