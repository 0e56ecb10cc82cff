/** The most jars that one household may ask for; null where the organiser set no cap. Whole jars, 1 or more. */
export interface ClaimCaps {
  /** Of one product. */
  readonly ofOffer: number | null
  /** Of all products of the day together. */
  readonly ofDay: number | null
}

/** What a household may have of one product by the caps, and which of the two is the tighter; null without a cap. */
export interface CapLimit {
  readonly most: number
  readonly by: 'offer' | 'day'
}

/**
 * The most jars of one product that a household may ask for and wait for together.
 *
 * @param elsewhere - jars that it asks for or waits for of the day's other products
 */
export function capLimit({ ofOffer, ofDay }: ClaimCaps, elsewhere: number): CapLimit | null {
  const left = ofDay === null ? null : Math.max(0, ofDay - elsewhere)
  if (ofOffer !== null && (left === null || ofOffer <= left)) return { most: ofOffer, by: 'offer' }
  return left === null ? null : { most: left, by: 'day' }
}
