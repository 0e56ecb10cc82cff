import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { formatSerial } from '@/shared/trace/jar-serial'

type Maybe = KitchenTime | null

/** A traced jar as far as its words go. */
export interface SaidTrace {
  readonly group: string
  readonly serial: string
  readonly shortName: string
  readonly state: string
  readonly whereNow: string
  readonly household: string | null
  readonly product: string
  readonly allergens: readonly string[]
  readonly lotNumber: string | null
  readonly lidLot: string | null
  readonly dayName: string
  readonly date: string
  readonly kitchen: string
  readonly elevationFeet: number
  readonly batch: { readonly code: string; readonly kettle: string | null; readonly startedAt: Maybe; readonly filledAt: Maybe }
  readonly loads: readonly {
    readonly code: string
    readonly state: string
    readonly canner: string
    readonly gauge: string | null
    readonly gaugeTestedOn: string | null
    readonly operator: string | null
    readonly loadedAt: Maybe
    readonly atTemperatureAt: Maybe
    readonly processedAt: Maybe
    readonly emptiedAt: Maybe
    readonly restarts: number
    readonly processRowKey: string | null
    readonly processEdition: string | null
    readonly processMinutes: number | null
    readonly processPsi: number | null
    readonly processSource: string | null
  }[]
  readonly ingredients: readonly {
    readonly code: string
    readonly item: string
    readonly quantity: number
    readonly unit: string
    readonly from: string
    readonly receivedOn: string
  }[]
  readonly people: readonly { readonly name: string; readonly work: readonly string[] }[]
  readonly sisters: readonly {
    readonly shortName: string
    readonly serial: string
    readonly state: string
    readonly household: string | null
  }[]
}

/** A trace as plain lines, for a terminal or a printer. */
export function sayTrace(jar: SaidTrace): string[] {
  const time = (at: Maybe) => (at === null ? '--:--' : formatClock(at))
  const holder = (household: string | null) => (household ? `, ${household}` : '')
  return [
    `Jar ${jar.shortName}  ${formatSerial(jar.serial)}  ${jar.product}`,
    `  ${jar.state}${holder(jar.household)}${jar.whereNow ? ` (${jar.whereNow})` : ''}`,
    `  contains: ${jar.allergens.join(', ') || 'none of the declared allergens'}`,
    `  lot ${jar.lotNumber ?? 'none yet'}, lid lot ${jar.lidLot ?? 'not written down'}`,
    `  ${jar.group}, ${jar.dayName}, ${jar.date}, ${jar.kitchen} at ${jar.elevationFeet} ft`,
    `Kettle batch ${jar.batch.code}: kettle ${jar.batch.kettle ?? '?'}, on ${time(jar.batch.startedAt)}, filled ${time(jar.batch.filledAt)}`,
    ...jar.people.map(({ name, work }) => `  planned: ${name}, ${work.join(', ')}`),
    ...jar.ingredients.map(
      ({ code, item, quantity, unit, from, receivedOn }) => `  ${code}: ${quantity} ${unit} of ${item}, from ${from}, ${receivedOn}`,
    ),
    ...jar.loads.flatMap((load) => [
      `Canner load ${load.code} (${load.state}): ${load.canner}${load.gauge ? `, ${load.gauge} gauge, tested ${load.gaugeTestedOn ?? 'never'}` : ''}, operator ${load.operator ?? '?'}`,
      `  loaded ${time(load.loadedAt)}, at temperature ${time(load.atTemperatureAt)}, heat off ${time(load.processedAt)}, emptied ${time(load.emptiedAt)}, restarts ${load.restarts}`,
      `  process ${load.processMinutes ?? '?'} min${load.processPsi === null ? '' : ` at ${load.processPsi} psi`}: ${load.processSource ?? '?'}; ${load.processEdition ?? '?'}; row ${load.processRowKey ?? '?'}`,
    ]),
    `Sister jars of the lot: ${jar.sisters.length - 1}`,
    ...jar.sisters
      .filter(({ serial }) => serial !== jar.serial)
      .map(({ shortName, serial, state, household }) => `  ${shortName}  ${formatSerial(serial)}  ${state}${holder(household)}`),
  ]
}
