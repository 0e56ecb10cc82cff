/**
 * One tap on a stepper: the next whole number in that direction, kept between the bounds.
 *
 * What is no number counts as the lower bound, so the first tap from an empty box lands on it.
 */
export function stepWithin(typed: string, by: number, min: number, max: number): number {
  const current = Number.parseInt(typed, 10)
  if (Number.isNaN(current)) return min
  return Math.min(max, Math.max(min, current + by))
}
