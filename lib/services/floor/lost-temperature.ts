import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { loseTemperature } from '@/shared/floor/process-clock'
import { AtLoad } from '@/shared/forms/floor'
import { tapLoad } from './one-load'

/** The boil or the pressure was lost: the clock goes away and the whole time starts again at the next full boil. One tap, no question. */
export const lostTemperature = defineCommand({
  name: 'lost-temperature',
  summary: 'Note that the boil or the pressure was lost',
  act: 'run-load',
  schema: AtLoad,
  run: (context, input) => tapLoad(context, { ...input, round: 'up', move: loseTemperature }),
})
