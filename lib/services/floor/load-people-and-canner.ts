import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import type { CannerNow, Operator } from '@/shared/floor/check-loading'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import type { KitchenTime } from '@/shared/time/kitchen-time'
import type { FloorDay } from './floor-day'

/** A canner of the day's kitchen as it stands now, with what its gauge was last found to be. */
export interface FloorCanner extends CannerNow {
  readonly id: string
  readonly gaugeErrorPsi: number | null
  /** ISO date of the last gauge test. */
  readonly gaugeTestedOn: string | null
  /** When its last load of this day came out. */
  readonly emptiedAt: KitchenTime | null
}

/** Reads a canner of the day's kitchen with what is in it; null when there is none. */
export async function cannerFor({ tx, actor: { groupId } }: CommandContext, day: FloorDay, cannerId: string): Promise<FloorCanner | null> {
  const canner = await tx.canner.findFirst({
    where: { groupId, id: cannerId, kitchenId: day.kitchenId },
    select: {
      id: true,
      label: true,
      method: true,
      gauge: true,
      gaugeErrorPsi: true,
      gaugeTestedOn: true,
      halfPints: true,
      pints: true,
      quarts: true,
      outOfUse: true,
      loads: { where: { dayId: day.id, state: { not: 'planned' } }, select: { code: true, state: true, emptiedAt: true } },
    },
  })
  if (!canner) return null
  const { loads, method, gauge, gaugeTestedOn, ...rest } = canner
  const inIt = loads.find(({ state }) => state !== 'done' && state !== 'failed')
  const emptied = loads.flatMap(({ emptiedAt }) => emptiedAt ?? [])
  return {
    ...rest,
    method: method as Method,
    gauge: gauge as Gauge | null,
    gaugeTestedOn: gaugeTestedOn?.toISOString().slice(0, 10) ?? null,
    busyWith: inIt?.code ?? null,
    emptiedAt: emptied.length > 0 ? Math.max(...emptied) : null,
  }
}

/** Reads who minds the canner; null when there is nobody of that id at work in the group. */
export async function operatorFor(
  { tx, actor: { groupId } }: CommandContext,
  personId: string,
): Promise<(Operator & { readonly id: string }) | null> {
  return tx.person.findFirst({
    where: { groupId, id: personId, active: true },
    select: { id: true, name: true, ageClass: true, skills: true },
  })
}
