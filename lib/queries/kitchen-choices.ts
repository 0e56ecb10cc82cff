import 'server-only'
import { database } from '@/lib/db/client'

/** A kitchen to choose from, with what a day's hours are held against. */
export interface KitchenChoice {
  readonly id: string
  readonly name: string
  readonly elevationFeet: number
  readonly opensAt: number
  readonly closesAt: number
}

/** The group's kitchens by name. One statement. */
export const kitchenChoices = (groupId: string): Promise<KitchenChoice[]> =>
  database().kitchen.findMany({
    where: { groupId },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, elevationFeet: true, opensAt: true, closesAt: true },
  })
