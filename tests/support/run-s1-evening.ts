import type { PrismaClient } from '@/lib/db/generated/client'
import { emptyCanner } from '@/lib/services/floor/empty-canner'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { finishProcess } from '@/lib/services/floor/finish-process'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { noteBrokenJar } from '@/lib/services/floor/note-broken-jar'
import { noteIncident } from '@/lib/services/floor/note-incident'
import { reachedTemperature } from '@/lib/services/floor/reached-temperature'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { restDay } from '@/lib/services/floor/rest-day'
import { startBatch } from '@/lib/services/floor/start-batch'
import { checkSeals } from '@/lib/services/floor/check-seals'
import { formatClock } from '@/shared/time/kitchen-time'
import { type LoadActual, LOADS } from '../fixtures/s1-day-actuals'
import { as, must, S1 } from './s1-floor'

const { dayId } = S1
const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

/** The lots that went in: given and bought plums, sugar, pectin; given and bought cucumbers, vinegar, mustard seed. */
export async function receiveS1Ingredients(): Promise<Readonly<Record<'jam' | 'pickles', string[]>>> {
  const receive = async (input: Record<string, unknown>) => String((await must(as('Cleo', receiveIngredients, { dayId, ...input }))).lotId)
  const bought = (item: string, quantity: number, unit: string, allergens: string[] = []) =>
    receive({ item, quantity, unit, source: 'grocer on Mill Street', receivedOn: '2027-08-25', allergens })
  const jam = [
    await receive({ pledgeId: 'gift-1', condition: 'ripe' }),
    await bought('plums', 7.5, 'lb'),
    await bought('sugar', 20, 'lb'),
    await bought('liquid pectin', 6, 'pouch'),
  ]
  const pickles = [
    await receive({ pledgeId: 'gift-2' }),
    await receive({ pledgeId: 'gift-3' }),
    await bought('pickling cucumbers', 14, 'lb'),
    await bought('vinegar 5%', 8, 'qt'),
    await bought('mustard seed', 8, 'oz', ['mustard']),
  ]
  return { jam, pickles }
}

/** One load from kettle to rack, as it was written down. */
export async function runS1Load(
  client: PrismaClient,
  actual: LoadActual,
  lots: Readonly<Record<'jam' | 'pickles', string[]>>,
): Promise<void> {
  const { load: loadId, batch: batchId, canner: cannerId } = actual
  const loadedAt = minutes(actual.loadedAt)
  const clock = (afterLoading: number) => formatClock(loadedAt + afterLoading)
  const isJam = batchId.startsWith('J')
  const kettleId = isJam ? (Number(batchId.slice(1)) % 2 === 1 ? 'K1' : 'K2') : 'K3'
  await must(as('Cleo', startBatch, { dayId, batchId, kettleId, lotIds: isJam ? lots.jam : lots.pickles, at: clock(-30) }))
  await must(as('Cleo', fillBatch, { dayId, batchId, jars: actual.jarsIn, at: clock(-2) }))
  await must(as('Gil', loadCanner, { dayId, loadId, cannerId, operatorId: 'p7', batchIds: [batchId], at: clock(0) }))
  await must(as('Gil', reachedTemperature, { dayId, loadId, at: clock(actual.atTempAfterMinutes) }))
  const done = actual.atTempAfterMinutes + actual.processedMinutes
  for (let broken = 0; broken < actual.broken; broken += 1) {
    const jar = await client.jar.findFirstOrThrow({ where: { batchId, state: 'filled' }, orderBy: { shortName: 'asc' } })
    const at = clock(actual.atTempAfterMinutes)
    await must(as('Gil', noteBrokenJar, { dayId, jarId: jar.id, at, how: 'base', where: `in ${cannerId}` }))
    await must(as('Gil', noteIncident, { dayId, at, what: `jar broke in ${cannerId}`, action: 'nobody hurt' }))
  }
  await must(as('Gil', finishProcess, { dayId, loadId, at: clock(done) }))
  await must(as('Gil', emptyCanner, { dayId, loadId, at: clock(done + 10) }))
}

/** The whole evening through runCommand alone, and the seal check of the next morning. */
export async function runS1Evening(client: PrismaClient, loads: readonly LoadActual[] = LOADS): Promise<void> {
  const lots = await receiveS1Ingredients()
  for (const actual of loads) await runS1Load(client, actual, lots)
  await must(
    as('Cleo', noteIncident, {
      dayId,
      at: '19:10',
      what: 'small steam burn, left forearm',
      action: 'cool running water, first-aid book entry',
    }),
  )
  await must(as('Ada', restDay, { dayId, at: '22:15' }))
  const unsealed: string[] = []
  for (const { batch, unsealedNextDay } of LOADS) {
    const jars = await client.jar.findMany({
      where: { batchId: batch, state: 'processed' },
      orderBy: { shortName: 'asc' },
      take: unsealedNextDay,
    })
    unsealed.push(...jars.map(({ id }) => id))
  }
  await must(as('Cleo', checkSeals, { dayId, on: '2027-08-27', at: '10:05', unsealed, way: 'fridge' }))
}
