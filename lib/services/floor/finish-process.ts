import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { finishProcess as finish } from '@/shared/floor/process-clock'
import { AtLoad } from '@/shared/forms/floor'
import { tapLoad } from './one-load'

/** The heat goes off; refused before the whole published time is over. */
export const finishProcess = defineCommand({
  name: 'finish-process',
  summary: 'Take the heat off',
  act: 'run-load',
  schema: AtLoad,
  run: (context, input) => tapLoad(context, { ...input, move: finish }),
})
