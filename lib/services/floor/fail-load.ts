import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { readRowKey } from '@/shared/floor/load-process'
import { failLoad as fail } from '@/shared/floor/process-clock'
import { settleUnsealed, type UnsealedWay } from '@/shared/floor/unsealed-jars'
import { FailLoad } from '@/shared/forms/floor'
import { jarLife, type JarState } from '@/shared/lifecycle/jar-states'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import type { Refusal } from '@/shared/wording/refusal'
import { tapLoad } from './one-load'

/** Gives a load up: its jars never had their process, so they go into a whole new one, into the fridge, or out, within the published 2 hours. */
export const failLoad = defineCommand({
  name: 'fail-load',
  summary: 'Give a load up',
  act: 'run-load',
  schema: FailLoad,
  run: (context, { way, why, ...input }) =>
    tapLoad(context, {
      ...input,
      round: 'up',
      move: fail,
      also: async ({ id }, at) => {
        const jars = await settleJars(context, id, way, at)
        return jars.ok ? ok({ why, way, jars: jars.value }) : jars
      },
    }),
})

/** Where jars go that have no process behind them. */
const AFTER: Readonly<Record<UnsealedWay, { readonly state: JarState; readonly whereNow: string }>> = {
  again: { state: 'filled', whereNow: 'waits for a new load' },
  fridge: { state: 'unsealed', whereNow: 'fridge' },
  discard: { state: 'discarded', whereNow: 'thrown out' },
}

async function settleJars(
  { tx, actor: { groupId } }: CommandContext,
  loadId: string,
  way: UnsealedWay,
  at: KitchenTime,
): Promise<Result<string[], Refusal>> {
  const jars = await tx.jar.findMany({
    where: { groupId, state: 'filled', loads: { some: { loadId } } },
    select: { id: true, shortName: true, batch: { select: { preparation: { select: { processRowKey: true } } } } },
    orderBy: { shortName: 'asc' },
  })
  const { state, whereNow } = AFTER[way]
  for (const { batch } of jars) {
    const { processRowKey } = batch.preparation
    if (processRowKey === null) throw new Error('a jar without a process was in a canner')
    const { pack } = readRowKey(processRowKey)
    const settled = settleUnsealed({ pack, wasProcessed: false, since: at }, way, at)
    if (!settled.ok) return refuse(sayFloorProblem(settled.problem))
  }
  if (state !== 'filled' && !jarLife.mayMove('filled', state)) throw new Error(`a filled jar cannot become ${state}`)
  await tx.jar.updateMany({ where: { groupId, id: { in: jars.map(({ id }) => id) } }, data: { state, whereNow } })
  return ok(jars.map(({ shortName }) => shortName))
}
