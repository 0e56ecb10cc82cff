import type { JarSize } from '@/shared/kitchen/jar-sizes'

/** How many jars a canner holds in one run, as it was measured. */
export interface CannerCapacity {
  readonly halfPints: number
  readonly pints: number
  readonly quarts: number
}

/**
 * Jars of one size that the canner holds: 12 oz jars take the places of pints, pint-and-a-half jars those of quarts (never more than were measured).
 *
 * @returns 0 for half-gallons, which nobody measured
 */
export function cannerHolds({ halfPints, pints, quarts }: CannerCapacity, size: JarSize): number {
  switch (size) {
    case 'half-pint':
      return halfPints
    case '12-oz':
    case 'pint':
      return pints
    case 'pint-and-half':
    case 'quart':
      return quarts
    case 'half-gallon':
      return 0
    default:
      return size satisfies never
  }
}
