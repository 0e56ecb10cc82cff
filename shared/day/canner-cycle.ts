import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method, Pack } from '@/shared/kitchen/methods'
import type { CannerCycle } from '@/shared/planning/day-problem'

/** Where the minutes around a process come from; shown beside them. */
export const CYCLE_SOURCE = 'Load, come-up and unload: this kitchen’s estimate.'

/** Minutes to set jars into a canner or lift them out. Common practice. */
const HANDLING_MINUTES = 5

/**
 * Minutes until a loaded boiling-water canner boils again, by how warm the jars go in. Common practice; it lies about the 20 to 30 minutes
 * that the Complete Guide prints for any load (USDA AIB No. 539, Recommended canners), less where jars and water are hot already.
 */
const COME_UP_MINUTES: Readonly<Record<Pack, number>> = { hot: 12, raw: 22 }

/** With the heat off and the lid off, before jars are lifted. Source: University of Florida IFAS Extension FCS8277, Table 1 footnote. */
const REST_MINUTES = 5

/** Until steam flows. Source: USDA Complete Guide to Home Canning, AIB No. 539 (1994), Recommended canners (12 to 15 min). */
const STEAM_MINUTES = 15

/** Steady steam before the vent is closed. Source: USDA Complete Guide to Home Canning, AIB No. 539 (1994), Using pressure canners. */
const VENT_MINUTES = 10

/** From the closed vent to pressure. Source: USDA Complete Guide to Home Canning, AIB No. 539 (1994), Using pressure canners (3 to 5 min). */
const PRESSURISE_MINUTES = 5

/** Until pressure has fallen by itself. Source: Pacific Northwest Extension PNW 421 (30 min with pints, 45 min with quarts). */
const FALL_MINUTES = { upToPints: 30, larger: 45 } as const

/** From open vent to lid off; PNW 421 says 2. Source: Oregon State University Extension, answer to a public question, 2024. */
const WAIT_MINUTES = 10

/** What a load takes besides its process time, as the planner counts it. */
export function cannerCycle(method: Method, pack: Pack, jarSize: JarSize): CannerCycle {
  const handling = { loadMinutes: HANDLING_MINUTES, unloadMinutes: HANDLING_MINUTES }
  if (method !== 'pressure')
    return {
      ...handling,
      comeUpMinutes: COME_UP_MINUTES[pack],
      ventMinutes: 0,
      pressuriseMinutes: 0,
      restMinutes: REST_MINUTES,
      waitMinutes: 0,
    }
  const isSmall = jarSize === 'half-pint' || jarSize === '12-oz' || jarSize === 'pint'
  return {
    ...handling,
    comeUpMinutes: STEAM_MINUTES,
    ventMinutes: VENT_MINUTES,
    pressuriseMinutes: PRESSURISE_MINUTES,
    restMinutes: isSmall ? FALL_MINUTES.upToPints : FALL_MINUTES.larger,
    waitMinutes: WAIT_MINUTES,
  }
}

/** Minutes to heat a canner's water from the tap before its first load. Common practice: about 33 min for 10 L on a 12,000 BTU/h ring. */
export const PREHEAT_MINUTES = 35
