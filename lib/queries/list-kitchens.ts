import 'server-only'
import { database } from '@/lib/db/client'
import type { Actor } from '@/shared/access/actor'

/** One kitchen as the list shows it. */
export interface ListedKitchen {
  readonly id: string
  readonly name: string
  readonly elevationFeet: number
  readonly opensAt: number
  readonly closesAt: number
  readonly headcountLimit: number
  readonly burners: number
  readonly kettles: number
  readonly canners: number
}

const IN_USE = { where: { outOfUse: null } } as const

/** The group's kitchens by name, with what is in use in each. One statement. */
export async function listKitchens({ groupId }: Actor): Promise<ListedKitchen[]> {
  const rows = await database().kitchen.findMany({
    where: { groupId },
    select: {
      id: true,
      name: true,
      elevationFeet: true,
      opensAt: true,
      closesAt: true,
      headcountLimit: true,
      _count: { select: { burners: IN_USE, kettles: IN_USE, canners: IN_USE } },
    },
    orderBy: { name: 'asc' },
    take: 100,
  })
  return rows.map(({ _count, ...kitchen }) => ({ ...kitchen, ..._count }))
}
