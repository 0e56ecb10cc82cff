import 'server-only'
import { database } from '@/lib/db/client'
import { dayProducts, type OfferedProduct } from '@/lib/queries/day-claims'
import { forecastDay, type PreparationForecast } from '@/shared/day/day-forecast'
import type { ForecastBatch } from '@/shared/day/preparation-jars'
import type { PromisedProduce, WeighedProduce } from '@/shared/day/produce-of-day'

/** The jars that each preparation of a day will give as things stand, by its id; see `forecastDay`. */
export type DayForecast = ReadonlyMap<string, PreparationForecast>

/**
 * Reads what a day's jars rest on and reckons them: claims and batches, promises and purchases, deliveries less culls. Two statements beside
 * the products.
 *
 * @param products - the day's products where the page has them already; read otherwise
 */
export async function dayForecast(groupId: string, dayId: string, products?: readonly OfferedProduct[]): Promise<DayForecast> {
  const [offered, produce, batches] = await Promise.all([
    products ?? dayProducts(groupId, dayId),
    readProduce(groupId, dayId),
    readBatches(groupId, dayId),
  ])
  const ofPreparation = (id: string) => batches.filter(({ preparationId }) => preparationId === id)
  const forecasts = forecastDay({
    ...produce,
    preparations: offered.map((product) => ({ ...product, batches: ofPreparation(product.id) })),
  })
  return new Map(forecasts.map((forecast) => [forecast.preparationId, forecast]))
}

interface ProduceRow {
  readonly kind: 'promised' | 'weighed'
  readonly item: string
  readonly quantity: unknown
  readonly unit: string
  readonly householdId: string | null
  readonly culled: unknown
}

/** A purchase came from a shop, whoever paid for it. */
async function readProduce(groupId: string, dayId: string): Promise<{ promised: PromisedProduce[]; weighed: WeighedProduce[] }> {
  const rows = await database().$queryRaw<ProduceRow[]>`
    SELECT 'weighed' AS kind, item, quantity, unit, household_id AS "householdId", culled
      FROM ingredient_lot WHERE group_id = ${groupId} AND day_id = ${dayId}
    UNION ALL SELECT 'promised', item, quantity, unit, household_id, 0
      FROM pledge WHERE group_id = ${groupId} AND day_id = ${dayId} AND kind = 'produce'
    UNION ALL SELECT 'promised', item, packs, pack, NULL, 0
      FROM purchase WHERE group_id = ${groupId} AND day_id = ${dayId}`
  const lines = rows.map(({ quantity, culled, ...row }) => ({ ...row, quantity: Number(quantity), culled: Number(culled) }))
  return { promised: lines.filter(({ kind }) => kind === 'promised'), weighed: lines.filter(({ kind }) => kind === 'weighed') }
}

function readBatches(groupId: string, dayId: string): Promise<(ForecastBatch & { preparationId: string })[]> {
  return database().kettleBatch.findMany({
    where: { groupId, dayId, state: { not: 'abandoned' } },
    select: { preparationId: true, plannedJars: true, jarsFilled: true },
  })
}
