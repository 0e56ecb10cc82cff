import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { reachTemperature } from '@/shared/floor/process-clock'
import { AtLoad } from '@/shared/forms/floor'
import { tapLoad } from './one-load'

/** A full boil, or pressure: the process clock of the load starts, from zero. */
export const reachedTemperature = defineCommand({
  name: 'reached-temperature',
  summary: 'Note the full boil or pressure',
  act: 'run-load',
  schema: AtLoad,
  run: (context, input) => tapLoad(context, { ...input, round: 'up', move: reachTemperature }),
})
