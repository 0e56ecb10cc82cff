import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { jarName } from '@/shared/kitchen/jar-sizes'

/** "12 min earlier", "5 min later", "the same". */
export function sayEarlier(minutes: number): string {
  if (minutes === 0) return 'the same'
  return minutes > 0 ? `${minutes} min earlier` : `${-minutes} min later`
}

/** "3 h 05 min", "45 min": how long somebody is at work. */
export function sayWorkMinutes(minutes: number): string {
  const hours = Math.floor(minutes / 60)
  return hours === 0 ? `${minutes} min` : `${hours} h ${String(minutes % 60).padStart(2, '0')} min`
}

/** "Lost: 8 half-pints of Plum jam.", or that nothing is. */
export function sayLost(lost: readonly { readonly title: string; readonly jarSize: JarSize; readonly jars: number }[]): string {
  if (lost.length === 0) return 'No jar is lost.'
  return `Lost: ${lost.map(({ title, jarSize, jars }) => `${jars} ${jarName(jarSize, jars)} of ${title}`).join(', ')}.`
}
