import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { kitchenTimeOf } from '@/lib/time/local-moment'
import { loseTemperature } from '@/shared/floor/process-clock'
import { LoseTemperature } from '@/shared/forms/floor'
import { tapLoad } from './one-load'

/** The boil or the pressure was lost: the clock goes away and the whole time starts again at the next full boil. One tap; without a time it is now. */
export const lostTemperature = defineCommand({
  name: 'lost-temperature',
  summary: 'Note that the boil or the pressure was lost',
  act: 'run-load',
  schema: LoseTemperature,
  async run(context, { dayId, loadId, at }) {
    return tapLoad(context, { dayId, loadId, at: at ?? (await clockNow(context, dayId)), move: loseTemperature })
  },
})

/** The minute on the kitchen's wall, 0 to 1439; the floor places it on its day again. */
async function clockNow({ tx, actor: { groupId }, now }: Parameters<typeof tapLoad>[0], dayId: string): Promise<number> {
  const day = await tx.day.findFirst({ where: { groupId, id: dayId }, select: { date: true, group: { select: { timeZone: true } } } })
  if (!day) return 0
  const time = kitchenTimeOf(now, day.date.toISOString().slice(0, 10), day.group.timeZone)
  return ((time % 1440) + 1440) % 1440
}
