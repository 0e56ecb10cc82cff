import 'server-only'
import { database } from '@/lib/db/client'
import { dayProducts, type OfferedProduct } from '@/lib/queries/day-claims'
import { produceLines } from '@/lib/queries/given-to-day'
import { forecastDay, type PreparationForecast } from '@/shared/day/day-forecast'
import type { ForecastBatch } from '@/shared/day/preparation-jars'

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
    produceLines(database(), groupId, dayId),
    readBatches(groupId, dayId),
  ])
  const ofPreparation = (id: string) => batches.filter(({ preparationId }) => preparationId === id)
  const forecasts = forecastDay({
    ...produce,
    preparations: offered.map((product) => ({ ...product, batches: ofPreparation(product.id) })),
  })
  return new Map(forecasts.map((forecast) => [forecast.preparationId, forecast]))
}

function readBatches(groupId: string, dayId: string): Promise<(ForecastBatch & { preparationId: string })[]> {
  return database().kettleBatch.findMany({
    where: { groupId, dayId, state: { not: 'abandoned' } },
    select: { preparationId: true, plannedJars: true, jarsFilled: true },
  })
}
