import type { PrismaClient } from '@/lib/db/generated/client'
import { claimJars } from '@/lib/services/day/claim-jars'
import { DEMAND, type OpenEvening, openEvening, saved } from './open-evening'

const HOURS_LONGER = 5

/**
 * The evening with twice the jars, five hours longer, and two pairs of hands fewer: 20 loads, too many to be planned while somebody waits, and
 * a bound that cannot be met, so that there is something to search for. The group must be seeded.
 */
export async function openBigDay(client: PrismaClient): Promise<OpenEvening> {
  const evening = await openEvening({ jam: 96, pickles: 64 })
  for (const [householdId, [jams, pints]] of Object.entries(DEMAND)) {
    await saved(claimJars, { preparationId: evening.jam, householdId, jars: jams * 2 })
    if (pints > 0) await saved(claimJars, { preparationId: evening.pickles, householdId, jars: pints * 2 })
  }
  const longer = { increment: HOURS_LONGER * 60 }
  await client.day.updateMany({ where: { id: evening.dayId }, data: { cannersEmptyBy: longer, hardEnd: longer } })
  return evening
}

/** Lets people stay on a big day, and two of them not come. Once for a seeded group. */
export async function stayForBigDays(client: PrismaClient): Promise<void> {
  await client.kitchen.updateMany({ data: { rackJars: 1_000 } })
  await client.person.updateMany({ data: { availableUntil: { increment: (HOURS_LONGER + 1) * 60 } } })
  await client.person.updateMany({ where: { name: { in: ['Dov', 'Esme'] } }, data: { active: false } })
}
