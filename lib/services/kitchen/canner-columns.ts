import 'server-only'
import type { AddCanner } from '@/shared/forms/equipment'

/** A calendar date as the date column takes it: midnight of that day in UTC. */
export function cannerColumns({ gaugeTestedOn, ...fields }: Omit<AddCanner, 'kitchenId'>) {
  return { ...fields, gaugeTestedOn: gaugeTestedOn === null ? null : new Date(`${gaugeTestedOn}T00:00:00Z`) }
}

export const NOT_TESTED_YET = 'That date has not come yet. Enter the test that was made.'
