import 'server-only'
import { database } from '@/lib/db/client'
import { BURNER_FIELDS, CANNER_FIELDS, KETTLE_FIELDS, KITCHEN_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import type { Actor } from '@/shared/access/actor'
import { type CannerVerdict, judgeCanner } from '@/shared/kitchen/judge-canner'
import { isoDate } from '@/shared/time/calendar-date'

interface Marked {
  readonly id: string
  /** Marks what the form is filled with. */
  readonly seen: string
  readonly label: string
  readonly outOfUse: string | null
}

export interface KitchenBurner extends Marked {
  readonly kind: string
  readonly btuPerHour: number | null
  readonly watts: number | null
  readonly circuit: string
  readonly keptFor: readonly string[]
  readonly note: string
}

export interface KitchenKettle extends Marked {
  readonly litres: number
  readonly material: string
  readonly keptFor: string
}

export interface KitchenCanner extends Marked {
  readonly method: string
  readonly gauge: string | null
  readonly gaugeTestedOn: string | null
  readonly gaugeErrorPsi: number | null
  readonly halfPints: number
  readonly pints: number
  readonly quarts: number
  readonly verdict: CannerVerdict
}

export interface KitchenFacts {
  readonly id: string
  readonly seen: string
  readonly name: string
  readonly elevationFeet: number
  readonly elevationSource: string
  readonly opensAt: number
  readonly closesAt: number
  readonly headcountLimit: number
  readonly rackJars: number
  readonly fridges: number
  readonly sinks: number
  readonly fillTables: number
  readonly notes: string
}

/** A kitchen with everything that stands in it. */
export interface KitchenPage {
  readonly kitchen: KitchenFacts
  readonly burners: readonly KitchenBurner[]
  readonly kettles: readonly KitchenKettle[]
  readonly canners: readonly KitchenCanner[]
}

const BY_LABEL = { orderBy: { label: 'asc' } } as const

/** A kitchen of the group, or null. Canners are judged for `today`, the date on its wall. */
export async function kitchenPage({ groupId }: Actor, id: string, today: string): Promise<KitchenPage | null> {
  const row = await database().kitchen.findUnique({
    where: { groupId_id: { groupId, id } },
    select: {
      ...KITCHEN_FIELDS,
      burners: { select: { id: true, ...BURNER_FIELDS }, ...BY_LABEL },
      kettles: { select: { id: true, ...KETTLE_FIELDS }, ...BY_LABEL },
      canners: { select: { id: true, ...CANNER_FIELDS }, ...BY_LABEL },
    },
  })
  if (!row) return null
  const { burners, kettles, canners, ...kitchen } = row
  return {
    kitchen: { id, seen: seenMark(kitchen), ...kitchen },
    burners: burners.map(({ id: burnerId, ...fields }) => ({ id: burnerId, seen: seenMark(fields), ...fields })),
    kettles: kettles.map(({ id: kettleId, ...fields }) => ({
      id: kettleId,
      seen: seenMark(fields),
      ...fields,
      litres: fields.millilitres / 1000,
    })),
    canners: canners.map(({ id: cannerId, ...fields }) => {
      const dated = { ...fields, gaugeTestedOn: fields.gaugeTestedOn && isoDate(fields.gaugeTestedOn) }
      return { id: cannerId, seen: seenMark(fields), ...dated, verdict: judgeCanner(dated, today) }
    }),
  }
}
