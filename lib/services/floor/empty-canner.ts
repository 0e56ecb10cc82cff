import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { emptyCanner as empty } from '@/shared/floor/process-clock'
import { AtLoad } from '@/shared/forms/floor'
import { ok } from '@/shared/result/result'
import { tapLoad } from './one-load'

/** The jars come out of the canner onto the rack: their process is done, their seals are not checked. */
export const emptyCanner = defineCommand({
  name: 'empty-canner',
  summary: 'Empty the canner',
  act: 'run-load',
  schema: AtLoad,
  run: (context, input) =>
    tapLoad(context, {
      ...input,
      move: empty,
      async also({ id }) {
        const { tx, actor } = context
        const { count } = await tx.jar.updateMany({
          where: { groupId: actor.groupId, state: 'filled', loads: { some: { loadId: id } } },
          data: { state: 'processed', whereNow: 'rack' },
        })
        return ok({ jars: count })
      },
    }),
})
