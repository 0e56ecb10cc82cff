import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { linesOf, type ReadyBand } from '@/shared/process/process-index'
import type { Band } from '@/shared/process/published-row'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { cannerKindOf } from './published-ways'

/** One figure of a table: minutes and psi as printed, or null where the table gives no time. */
export type BandFigure = { readonly minutes: number; readonly psi: number | null } | null

/** The printed table around one answer: a column for each printed jar, a row for each elevation band. */
export type BandTable = {
  readonly jars: readonly JarSize[]
  readonly rows: readonly { readonly band: Band; readonly isHere: boolean; readonly figures: readonly BandFigure[] }[]
}

/** The table that a process was read from: the same food, canner, pack and pressure option, for every jar and band it prints. */
export function bandTable(process: ScheduledProcess): BandTable {
  const { foodId, method, gauge, pack, option } = process
  const canner = cannerKindOf(method, gauge)
  const columns = JAR_SIZES.flatMap((jar) => {
    const lines = canner === null ? undefined : linesOf(foodId, canner, pack, jar)
    const line = lines?.find((each) => each.option === option)
    return line?.bands.some(isPrintedFor(jar)) ? [{ jar, bands: line.bands }] : []
  })
  const own = columns.find(({ jar }) => jar === process.jarRow)?.bands ?? []
  return {
    jars: columns.map(({ jar }) => jar),
    rows: own.map(({ band }) => ({
      band,
      isHere: band.minFeet === process.bandMinFeet,
      figures: columns.map(({ bands }) => figureAt(bands, band)),
    })),
  }
}

const isPrintedFor =
  (jar: JarSize) =>
  ({ process }: ReadyBand): boolean =>
    process?.jarRow === jar

/** Columns may be printed in other bands than the row's: a figure is shown only where its band covers the row's whole band. */
function figureAt(bands: readonly ReadyBand[], { minFeet, maxFeet }: Band): BandFigure {
  const found = bands.find(
    ({ band }) => minFeet >= band.minFeet && (band.maxFeet === null || (maxFeet !== null && maxFeet <= band.maxFeet)),
  )
  return found?.process ? { minutes: found.process.minutes, psi: found.process.psi } : null
}
