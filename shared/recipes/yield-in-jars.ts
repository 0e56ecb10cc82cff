import { JAR_MILLILITRES, type JarSize } from '@/shared/kitchen/jar-sizes'
import type { JarYield, Recipe } from './recipe'

/**
 * What one batch gives in another jar size: as counted in that jar, else the same volume, whole jars, a part-filled jar not counted.
 *
 * The printed yield is returned unchanged for the jar it is printed for.
 */
export function yieldInJars({ batch, yields }: Pick<Recipe, 'batch' | 'yields'>, jar: JarSize): JarYield {
  if (jar === batch.jar) return batch.yield
  const counted = yields?.[jar]
  if (counted) return counted
  const ratio = Math.round(JAR_MILLILITRES[batch.jar] / SMALLEST) / Math.round(JAR_MILLILITRES[jar] / SMALLEST)
  const whole = (jars: number) => Math.floor(jars * ratio + 1e-9)
  return { low: whole(batch.yield.low), typical: whole(batch.yield.typical), high: whole(batch.yield.high) }
}

/** A quarter of a half-pint: 8, 12, 16, 24, 32 and 64 fl oz are whole multiples of 2 fl oz. */
const SMALLEST = JAR_MILLILITRES['half-pint'] / 4
