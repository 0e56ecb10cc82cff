/** Ways of heat-processing filled jars. */
export const METHODS = ['boiling-water', 'atmospheric-steam', 'pressure'] as const
export type Method = (typeof METHODS)[number]

/** The two kinds of pressure gauge that published tables tell apart. */
export const GAUGES = ['dial', 'weighted'] as const
export type Gauge = (typeof GAUGES)[number]

/** How food goes into the jar: cooked and hot, or raw and covered with hot liquid. */
export const PACKS = ['hot', 'raw'] as const
export type Pack = (typeof PACKS)[number]

/** "boiling-water canner", as said on screens. */
export const cannerName = (method: Method): string =>
  ({ 'boiling-water': 'boiling-water canner', 'atmospheric-steam': 'steam canner', pressure: 'pressure canner' })[method]
