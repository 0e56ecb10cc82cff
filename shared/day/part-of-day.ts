import type { KitchenTime } from '@/shared/time/kitchen-time'

const NOON = 12 * 60
const EVENING = 17 * 60

/** "evening", "afternoon", "morning" or "day": what people call the time between the first load and the last canner empty. */
export function partOfDay({ firstLoadAt, cannersEmptyBy }: { firstLoadAt: KitchenTime; cannersEmptyBy: KitchenTime }): string {
  if (firstLoadAt >= EVENING) return 'evening'
  if (firstLoadAt >= NOON && cannersEmptyBy <= EVENING + 60) return 'afternoon'
  return cannersEmptyBy <= NOON + 60 ? 'morning' : 'day'
}
