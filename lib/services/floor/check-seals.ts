import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { readRowKey } from '@/shared/floor/load-process'
import { checkSeal, settleUnsealed, type UnsealedWay } from '@/shared/floor/unsealed-jars'
import { CheckSeals } from '@/shared/forms/floor'
import { jarLife } from '@/shared/lifecycle/jar-states'
import { ok, type Result, refuse } from '@/shared/result/result'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { takeLids } from './fill-batch'
import { type FloorDay, lockFloorDay, timeAfterDay } from './floor-day'

/**
 * Notes how lids were found. Every jar that waits, of one load or of the whole day, is sealed but those that are named; an unsealed one is chilled, filled
 * again with a new lid for a second process, or thrown out, within the published hours. A lid is called sealed only after 12 hours of cooling.
 */
export const checkSeals = defineCommand({
  name: 'check-seals',
  summary: 'Check the seals',
  act: 'check-seals',
  schema: CheckSeals,
  async run(context, { dayId, on, at, unsealed, way, ...input }) {
    const day = await lockFloorDay(context, dayId, ['running', 'resting'])
    if (!day.ok) return day
    const jars = await jarsToCheck(context, dayId, input)
    const all = new Set(jars.map(({ id }) => id))
    if ([...unsealed, ...(input.jarIds ?? [])].some((id) => !all.has(id))) return refuse(notFound('A jar that waits for its check'))
    if (jars.length === 0) return refuse(NOTHING_WAITS)
    const after = jars.map(({ load, emptiedAt }) => ({ what: `the emptying of ${load}`, at: emptiedAt }))
    const when = timeAfterDay(day.value, { on, at, after, now: context.now })
    if (!when.ok) return when

    const up = jars.filter(({ id }) => unsealed.includes(id))
    const down = jars.filter(({ id }) => !unsealed.includes(id))
    const sealed = await noteSealed(context, down, when.value)
    if (!sealed.ok) return sealed
    const settled = await noteUnsealed(context, day.value, { jars: up, way, at: when.value, lidLotId: input.lidLotId })
    if (!settled.ok) return settled
    const names = (of: readonly JarToCheck[]) => of.map(({ shortName }) => shortName)
    const detail = { on, at: formatClock(at), sealed: names(down), unsealed: names(up), way: up.length > 0 ? way : null }
    const reply = { dayId, sealed: down.length, unsealed: names(up) }
    return ok({ reply, history: [{ subject: `seals of day ${dayId}`, detail, dayId }] })
  },
})

interface JarToCheck {
  readonly id: string
  readonly shortName: string
  readonly seal: string | null
  readonly processRowKey: string
  /** The load that it came out of last. */
  readonly load: string
  readonly processedAt: KitchenTime
  readonly emptiedAt: KitchenTime
}

/** Jars that came out of a canner and were not checked since, with the times of the load that they came out of last. */
async function jarsToCheck(
  { tx, actor: { groupId } }: CommandContext,
  dayId: string,
  { loadId, jarIds }: Pick<CheckSeals, 'loadId' | 'jarIds'>,
): Promise<JarToCheck[]> {
  const jars = await tx.$queryRaw<(JarToCheck & { loadId: string })[]>`
    SELECT j.id, j.short_name AS "shortName", j.seal, r.process_row_key AS "processRowKey", l.id AS "loadId", l.code AS load,
      l.processed_at AS "processedAt", l.emptied_at AS "emptiedAt"
    FROM jar j JOIN kettle_batch b ON b.group_id = j.group_id AND b.id = j.batch_id
      JOIN preparation r ON r.group_id = b.group_id AND r.id = b.preparation_id
      JOIN LATERAL (
        SELECT c.id, c.code, c.processed_at, c.emptied_at FROM jar_load jl JOIN canner_load c ON c.group_id = jl.group_id AND c.id = jl.load_id
        WHERE jl.group_id = j.group_id AND jl.jar_id = j.id AND c.state = 'done' ORDER BY jl.turn DESC LIMIT 1) l ON true
    WHERE j.group_id = ${groupId} AND j.day_id = ${dayId} AND j.state = 'processed'
    ORDER BY length(j.short_name), j.short_name`
  return jars.filter((jar) => (loadId === undefined || jar.loadId === loadId) && (jarIds?.includes(jar.id) ?? true))
}

async function noteSealed(
  { tx, actor: { groupId } }: CommandContext,
  jars: readonly JarToCheck[],
  at: KitchenTime,
): Promise<Result<number, Refusal>> {
  for (const { emptiedAt } of jars) {
    const cooled = checkSeal(emptiedAt, at)
    if (!cooled.ok) return refuse(sayFloorProblem(cooled.problem))
  }
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
  readonly jars: readonly JarToCheck[]
  readonly way: UnsealedWay
  readonly at: KitchenTime
  readonly lidLotId: string | undefined
}

async function noteUnsealed(context: CommandContext, day: FloorDay, { jars, way, at, lidLotId }: Unsealed): Promise<Result<true, Refusal>> {
  if (jars.length === 0) return ok(true)
  const { tx, actor } = context
  const { groupId } = actor
  for (const { processRowKey, processedAt } of jars) {
    const { pack } = readRowKey(processRowKey)
    const settled = settleUnsealed({ pack, wasProcessed: true, since: processedAt }, way, at)
    if (!settled.ok) return refuse(sayFloorProblem(settled.problem))
  }
  if (way === 'again' && day.state !== 'running')
    return refuse(badInput({ way: ['The canners are cold: chill the jar, or throw it out.'] }))
  const newLids = way === 'again' ? await takeLids(context, lidLotId ?? day.lidLotId, jars.length, day.date) : ok(null)
  if (!newLids.ok) return newLids
  const first = jars.filter(({ seal }) => seal === null).map(({ id }) => id)
  await tx.jar.updateMany({ where: { groupId, id: { in: first } }, data: { seal: 'unsealed', sealCheckedAt: at } })
  const lids = way === 'again' ? { lidLotId: lidLotId ?? day.lidLotId, lidsUsed: { increment: 1 } } : {}
  await tx.jar.updateMany({ where: { groupId, id: { in: jars.map(({ id }) => id) } }, data: { ...AFTER[way], ...lids } })
  return ok(true)
}

const NOTHING_WAITS = notNow(
  'nothing-waits',
  'No jar waits for its check.',
  'All were checked, or none came out of a canner yet.',
  'Load the page again.',
)
