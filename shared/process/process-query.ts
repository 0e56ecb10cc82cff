import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'

/** Ways that are sometimes tried and never published; naming one is answered with the hazard. */
export const UNSAFE_METHODS = ['open-kettle', 'oven', 'microwave', 'dishwasher', 'multi-cooker', 'canning-powder', 'jar-inversion'] as const
/** A way of UNSAFE_METHODS. */
export type UnsafeMethod = (typeof UNSAFE_METHODS)[number]

/** Height above sea level, or null when nobody has said: it is asked for, never assumed. */
export type Elevation = { readonly feet: number } | { readonly metres: number } | null

/** How the food was made ready, where that can make a published process unusable. */
export type Preparation = {
  /** Flour, starch, pasta, rice, cream or another thickener that the tested recipe does not have. */
  readonly untestedThickener?: boolean
  /** Recipe quantities cooked in one kettle at once; 1 is the tested batch. */
  readonly batchesInOneKettle?: number
  readonly kettleMetal?: 'stainless-steel' | 'enamel' | 'aluminium'
}

/**
 * What somebody wants to put up, where.
 *
 * `food` is a process id, a food id or a plain name. `pack` may be null when the food has one; `gauge` counts for pressure only.
 */
export type ProcessQuery = {
  readonly food: string
  readonly pack: Pack | null
  readonly jar: JarSize
  readonly method: Method | UnsafeMethod
  readonly gauge: Gauge | null
  readonly elevation: Elevation
  /** Which printed pressure, where a table offers several; the first one when absent. */
  readonly option?: number
  /** What the dial shows above the true pressure, psi; negative when it shows too little. */
  readonly gaugeErrorPsi?: number
  /** ISO date of the last gauge test; null when never tested; absent when no instrument is being asked about. */
  readonly gaugeTestedOn?: string | null
  /** ISO date of the canning, against which the gauge test is judged. */
  readonly askedOn?: string
  readonly preparation?: Preparation
}
